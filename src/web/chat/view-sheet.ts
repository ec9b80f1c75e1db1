import type { Photo } from './view.ts'
import type { Option } from './view-question.ts'

/** A sheet as it lies on a photo: corners in shares of its width and height, numbered as they were marked. */
export type OutlineShown = readonly (readonly [x: number, y: number])[]

/** A photo on which the four corners of a sheet are marked. */
export interface SheetShown {
  readonly photo: Photo
  /** Pixels of the upright picture: how tall it is. */
  readonly width: number
  readonly height: number
  /** What the sheet may be. */
  readonly sheets: readonly Option[]
  /** Percent of the picture's width and height, as they were sent; empty where none is marked. Always four. */
  readonly corners: readonly { readonly x: string; readonly y: string }[]
  /** Those that lie on the photo, to be drawn. */
  readonly outline: OutlineShown
  /** How wide the picture is shown without a script, px of a page: a tap tells the place within it. */
  readonly wide: number
  /** Whether it is shown as large as it may be. */
  readonly isLarge: boolean
  /** Whether a corner was tapped on a small picture. */
  readonly coarse: boolean
  /** "Three corners are marked. Tap the last one." */
  readonly told: string
  readonly refused: string | null
  /** What the photo tells by now, and by whose marks; null: nothing. */
  readonly standing: string | null
  /** Whether marks can be taken back, so that what was found by itself counts again. */
  readonly canTakeBack: boolean
  readonly postTo: string
  readonly hidden: Readonly<Record<string, string>>
}

/** A page of the conversation to mark a sheet on. */
export interface SheetPage {
  readonly page: 'sheet'
  readonly title: string
  readonly lead: string
  readonly shown: SheetShown
  readonly backHref: string
}
