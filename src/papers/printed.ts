import type { Drawing } from './drawing.ts'
import type { QuiltToDraw } from './quilt-picture.ts'

/** A printed paper as plain data: whatever writes it knows nothing of piles. */
export interface Printed {
  readonly title: string
  /** Code of the language it is written in. */
  readonly language: string
  /** When it was made, ms UTC. */
  readonly at: number
  /** Stands above every page: what it is and whose. */
  readonly head: string
  /** "Page #n of #m", with these two signs where the numbers go. */
  readonly pages: string
  /** What is drawn to scale bears a line to measure: its words and how long it is, mm. */
  readonly measure: { readonly words: string; readonly long: number } | null
  readonly blocks: readonly Block[]
}

export interface PrintedItem {
  readonly words: string
  /** In smaller letters below. */
  readonly notes?: readonly string[]
  /** In a dashed box right below. */
  readonly cautions?: readonly string[]
}

/** A field of a grid of fields that are cut apart. */
export interface Card {
  /** The large word. */
  readonly big: string
  readonly lines: readonly string[]
  /** What a QR code beside the words says. */
  readonly code?: string
  /** Stands on the right, as high as the card has room. */
  readonly drawing?: Drawing
}

export type Block =
  | { readonly block: 'heading'; readonly level: 1 | 2 | 3; readonly words: string }
  | { readonly block: 'words'; readonly words: string; readonly as?: 'small' | 'strong' | 'large' }
  | { readonly block: 'caution'; readonly words: string }
  | {
      readonly block: 'list'
      /** `tick`: a box to tick; `step`: numbered, with a box; `number`; `plain`: a short line. */
      readonly as: 'tick' | 'step' | 'number' | 'plain'
      readonly items: readonly PrintedItem[]
    }
  /** Names with what belongs to them. */
  | {
      readonly block: 'rows'
      readonly rows: readonly { readonly name: string; readonly words: string }[]
    }
  | {
      readonly block: 'table'
      readonly head: readonly string[]
      /** Parts of the width, one a column; they add up to 1. */
      readonly widths: readonly number[]
      /** Columns whose words stand at their right. */
      readonly right?: readonly number[]
      /** Its empty cells are written in by hand. */
      readonly toFill?: boolean
      /** Rows in bold letters. */
      readonly strong?: readonly number[]
      readonly rows: readonly (readonly string[])[]
    }
  /** To its own scale; made smaller only where a page has no room for it. */
  | { readonly block: 'drawing'; readonly drawing: Drawing; readonly told: string }
  /** In the colours of its cloths, every garment's pieces with its number. Height in mm at most. */
  | {
      readonly block: 'quilt'
      readonly quilt: QuiltToDraw
      readonly told: string
      readonly most: number
    }
  | {
      readonly block: 'cards'
      readonly columns: number
      /** mm */
      readonly high: number
      /** Side of a QR code without its quiet zone, mm; more where its squares would become too small. */
      readonly codeSide?: number
      /** With a smaller large word, and one line for what comes first below it. */
      readonly small?: boolean
      readonly cards: readonly Card[]
    }
  /** Empty lines to write on, side by side. */
  | { readonly block: 'fields'; readonly names: readonly string[] }
  | { readonly block: 'page' }
