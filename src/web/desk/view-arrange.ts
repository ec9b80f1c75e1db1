import type { ShownQuilts } from '../chat/view-quilt.ts'
import type { Link } from './view.ts'
import type { WayMark } from './view-what-if.ts'

/** A form of one button that changes how a quilt lies. */
export interface TouchButton {
  readonly fields: Readonly<Record<string, string>>
  readonly label: string
  /** What it acts on, for who hears the button alone. */
  readonly about: string | null
  readonly look: 'main' | 'second' | 'quiet'
}

/** A piece that is chosen. */
export interface ChosenPiece {
  /** "Row 2, column 3: Blue flannel". */
  readonly label: string
  /** "main pieces, cut 6 1/2 × 6 1/2 in". */
  readonly kind: string
  /** "Pinned here. Marta, 12 Mar, 14:03"; null: it is not. */
  readonly pinned: string | null
  /** Pins it, or lets go of it. */
  readonly touch: TouchButton
}

/** Choosing a piece without the picture. */
export interface PieceChoice {
  readonly action: string
  readonly hidden: Readonly<Record<string, string>>
  readonly name: 'piece' | 'with'
  readonly label: string
  readonly groups: readonly {
    readonly label: string
    readonly options: readonly { readonly value: string; readonly label: string }[]
  }[]
  readonly send: string
}

/** What comes of a change of two, or why there is none. */
export interface ShownSwap {
  readonly words: readonly string[]
  readonly mark: WayMark | null
  readonly touch: TouchButton | null
}

/** What is chosen, and what may be done with it. */
export interface ArrangePanel {
  readonly title: string
  /** What has just been done, and the button that takes it back. */
  readonly done: { readonly words: string; readonly back: TouchButton | null } | null
  readonly pieces: readonly ChosenPiece[]
  readonly swap: ShownSwap | null
  readonly hint: string | null
  /** Null: there is nothing to choose among. */
  readonly choice: PieceChoice | null
  readonly startOver: Link | null
}

export interface PinLine {
  readonly label: string
  /** Why it is not used; null: it is. */
  readonly why: string | null
  readonly by: string
  readonly touch: TouchButton
}

export interface ArrangeRow {
  readonly heading: string
  readonly pieces: readonly {
    readonly n: number
    /** "3", or "3.2" for the second piece of a block. */
    readonly place: string
    /** The same to be heard: "Column 3, piece 2". */
    readonly told: string
    /** The garment's number; null: bought cloth. */
    readonly garment: number | null
    readonly name: string
    readonly href: string
    readonly pinned: boolean
  }[]
}

/** A laid quilt whose pieces may be moved. */
export interface ArrangeBoard {
  /** One SVG element of our own making: every word in it is escaped. */
  readonly picture: string
  readonly hints: readonly string[]
  readonly panel: ArrangePanel
  /** How firmly the quilt lies, and buttons that loosen it; null: nobody has touched it. */
  readonly hold: {
    readonly words: readonly string[]
    readonly touches: readonly TouchButton[]
  } | null
  readonly pins: readonly PinLine[]
  readonly lost: readonly PinLine[]
  readonly elsewhere: string | null
  readonly rows: readonly ArrangeRow[]
}

export interface ArrangePage {
  readonly page: 'arrange'
  readonly title: string
  readonly quilt: string
  readonly back: Link
  /** Other quilts of the pile. */
  readonly others: readonly Link[]
  readonly refused: string | null
  readonly state: ShownQuilts['state']
  /** Why there is no quilt yet, or that it may still change. */
  readonly words: readonly string[]
  readonly again: Link | null
  readonly postTo: string
  readonly csrf: string
  readonly board: ArrangeBoard | null
}
