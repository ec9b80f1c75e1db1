import type { Grade } from '../chat/view.ts'
import type { Link } from './view.ts'

export interface FactField {
  /** The fact's name in the form. */
  readonly name: string
  readonly label: string
  /** "little (customer)". */
  readonly now: string
  readonly value: string
  readonly options: readonly { readonly value: string; readonly label: string }[]
  /** It is chosen otherwise than it stands. */
  readonly changed: boolean
}

/** A fact that the workshop set: who, when and why. */
export interface FactSetLine {
  readonly id: string
  readonly words: string
  readonly by: string
  readonly reason: string
  readonly undone: string | null
}

/** What setting facts would do. */
export interface FactsEffect {
  readonly before: Grade | null
  readonly after: Grade | null
  /** A sentence each: reasons that come and go, pressing, cloth, price. */
  readonly sentences: readonly string[]
}

export interface FactsPage {
  readonly page: 'facts'
  readonly title: string
  readonly back: Link
  readonly postTo: string
  readonly csrf: string
  readonly seen: number
  readonly reason: string
  readonly fields: readonly FactField[]
  readonly sets: readonly FactSetLine[]
  readonly undoAt: string
  readonly error: string | null
  /** Null: nothing is tried yet. */
  readonly effect: FactsEffect | null
}
