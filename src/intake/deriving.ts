import type { PileRow } from '../store/schema.ts'
import type { Knowledge } from './knowledge.ts'
import { type Derived, deriveOn, type More, type Pile } from './pile.ts'

/** A pile that is derived when it is first asked for: an answer is taken by where the conversation stands. */
export interface Deriving {
  readonly pile: Pile
  /** The pile as its row stands after these. */
  on(row: PileRow, more: More): Deriving
}

export const deriving = (knowledge: Knowledge, derived: Derived): Deriving =>
  derivingOn(knowledge, derived, null)

/** What came since `derived` is derived at once, however many answers it were. */
function derivingOn(
  knowledge: Knowledge,
  derived: Derived,
  since: { readonly row: PileRow; readonly more: More } | null,
): Deriving {
  let known = derived
  let waiting = since
  return {
    get pile() {
      if (waiting) known = deriveOn(knowledge, waiting.row, known, waiting.more)
      waiting = null
      return known.pile
    },
    on(row, { entries, following: followed }) {
      const all = [...(waiting?.more.entries ?? []), ...entries]
      return derivingOn(knowledge, known, { row, more: { entries: all, following: followed } })
    },
  }
}
