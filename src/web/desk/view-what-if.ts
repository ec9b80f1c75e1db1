import type { Link } from './view.ts'

/** Whether a way does better or worse than the pile as it stands, with sign and words. */
export interface WayMark {
  readonly side: 'better' | 'worse'
  readonly text: string
}

/** What one way comes to in one respect. */
export interface WayCell {
  readonly lines: readonly string[]
  readonly mark: WayMark | null
}

export interface WayHead {
  /** "As it stands", "Way 1". */
  readonly name: string
  readonly changes: readonly string[]
  /** To the page without it; null: the pile as it stands. */
  readonly away: Link | null
  /** The way as the form to take it up sends it; null: it is the pile as it stands, or cannot be taken up. */
  readonly way: string | null
}

export interface WayRow {
  readonly label: string
  /** One for each way. */
  readonly cells: readonly WayCell[]
}

export interface Choice {
  readonly value: string
  readonly label: string
}

/** What a further way may be made of; the address of the page keeps the others. */
export interface WayForm {
  readonly action: string
  readonly tries: readonly string[]
  /** Ways to begin with; empty: the pile as it stands alone. */
  readonly from: readonly Choice[]
  readonly selects: readonly {
    readonly id: string
    readonly label: string
    readonly choices: readonly Choice[]
  }[]
  readonly roles: {
    readonly garments: readonly Choice[]
    readonly roles: readonly Choice[]
  } | null
}

export interface WhatIfPage {
  readonly page: 'what-if'
  readonly title: string
  readonly quilt: string
  readonly back: readonly Link[]
  /** Ways that could not be tried, a sentence each, and the way on without them. */
  readonly refused: readonly string[]
  readonly heads: readonly WayHead[]
  readonly rows: readonly WayRow[]
  /** Something is still being worked out. */
  readonly again: Link | null
  /** Null: no further way fits beside these. */
  readonly form: WayForm | null
  /** Null: the pile is decided. */
  readonly takeUp: {
    readonly postTo: string
    readonly csrf: string
    readonly seen: number
    readonly reason: string
    readonly error: string | null
  } | null
}
