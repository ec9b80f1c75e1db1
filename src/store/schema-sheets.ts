import type { Json } from './columns.ts'

/** What people marked on photos to measure by. */
export interface SheetTables {
  sheet_mark: SheetMarkTable
}

/** The four corners of a sheet on a photo. Never edited: it is undone, and another made. The newest that stands counts. */
interface SheetMarkTable {
  id: string
  pile_id: string
  photo_id: string
  /** What the sheet is, as the person says. */
  sheet: 'letter' | 'a4' | 'id1'
  /** As they were marked, in shares of the upright picture. */
  corners: Json
  /** What the photo tells by them. */
  sizes: Json
  /** The account's id; null: the customer. */
  who: string | null
  at: number
  undone_at: number | null
  /** The account's id; null: the customer, or it stands. */
  undone_by: string | null
}
