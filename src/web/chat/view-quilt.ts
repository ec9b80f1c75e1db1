import type { Link } from './view.ts'

/** A cloth of a quilt, as it stands in the list beside the picture. */
export interface ShownCloth {
  /** The garment's number; null: bought cloth. */
  readonly n: number | null
  readonly name: string
  /** `#rrggbb`, and of the signs upon it. */
  readonly colour: string
  readonly mark: string
  /** Of its print; null: none is told. */
  readonly second: string | null
  /** Where its cloth is shown; null: there is no photo of it. */
  readonly photo: string | null
  /** Nobody told its colour. */
  readonly untold: boolean
  /** "12 pieces". */
  readonly pieces: string
}

export interface ShownQuilt {
  /** "Quilt 1 of 2"; null: there is one. */
  readonly heading: string | null
  /** One SVG element of our own making: every word in it is escaped. */
  readonly picture: string
  readonly save: Link
  /** To where its pieces are moved; null: not for this reader. */
  readonly arrange: Link | null
  readonly cloths: readonly ShownCloth[]
}

/** The picture of the quilts a pile becomes. */
export interface ShownQuilts {
  /** Drawn; still being laid; there is nothing to draw; not to be had now. */
  readonly state: 'drawn' | 'laying' | 'none' | 'failed'
  readonly title: string
  /** What the picture is, or why there is none. */
  readonly words: readonly string[]
  /** To look again; null: there is nothing to wait for. */
  readonly again: Link | null
  /** The script looks again by itself. */
  readonly unsettled: boolean
  readonly quilts: readonly ShownQuilt[]
  /** Garments whose colour nobody told; null: none. */
  readonly untold: { readonly words: string; readonly links: readonly Link[] } | null
}
