import type { SheetShown } from '../chat/view-sheet.ts'
import type { Link } from './view.ts'

/** A page to mark the corners of a sheet on a photo of a garment. */
export interface DeskSheetPage {
  readonly page: 'sheet'
  readonly title: string
  readonly lead: string
  readonly back: Link
  /** What was found by itself, whatever was marked since; null: nothing was. */
  readonly found: string | null
  readonly shown: SheetShown
}
