import type { Option, Tag, Tally } from './view.ts'

/** Something grave that is known of a garment before all is told. */
export interface EarlyTold {
  readonly n: number
  readonly name: string
  readonly grade: 'eyes' | 'home'
  readonly sentence: string
  readonly next: string | null
  /** Left out at a press; null: a person looks first. */
  readonly dropHidden: Readonly<Record<string, string>> | null
}

/** Many garments at once: a line each, or a tap on what each is. */
export interface ClosetPage {
  readonly page: 'closet'
  readonly tags: readonly Tag[]
  readonly tally: Tally | null
  readonly early: readonly EarlyTold[]
  readonly postTo: string
  readonly garmentsTo: string
  readonly hidden: Readonly<Record<string, string>>
  /** Typed so far, or refused. */
  readonly lines: string
  readonly refusal: string | null
  readonly most: number
  readonly kinds: readonly Option[]
  /** The garment that was just added by a tap; null: none was. */
  readonly added: string | null
  /** How many were not looked over, and where that is done. */
  readonly waiting: { readonly count: number; readonly href: string } | null
  /** Where the questions go on; null: none is open. */
  readonly goOnHref: string | null
  readonly backHref: string
}

/** Garments that are called alike: what was read is right of all of them, or of none. */
export interface Alike {
  /** "4.5.6" */
  readonly id: string
  readonly name: string
  readonly count: number
  /** What was read in its words. */
  readonly parts: readonly Option[]
  /** To be chosen where no words told it; empty: they did. */
  readonly kinds: readonly Option[]
  readonly sizes: readonly Option[]
}

/** Something that may be true, and of which garments it is. */
export interface Mark {
  readonly id: string
  readonly words: string
  readonly garments: readonly Option[]
}

export interface MarkGroup {
  readonly question: string
  readonly title: string
  readonly drawing: string | null
  readonly cautions: readonly string[]
  readonly marks: readonly Mark[]
}

/** Garments looked over together: what was read of each, and what is true of some. */
export interface ScreeningPage {
  readonly page: 'screening'
  readonly alike: readonly Alike[]
  readonly groups: readonly MarkGroup[]
  readonly postTo: string
  readonly hidden: Readonly<Record<string, string>>
  readonly backHref: string
}
