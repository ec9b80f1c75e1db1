import type { Followed } from '../flow/followed.ts'
import type { Act } from '../flow/grammar.ts'
import type { KeptAct } from './rows.ts'

/** What was done since the queue's rows of a pile were last written; null: nobody knows. */
export type Since = readonly Act[] | null

export const nothing: Since = []

export const andThen = (some: Since, more: Since): Since => some && more && [...some, ...more]

/** Of the one garment that is being told of, and to nobody but us. */
const isWithin = (item: number, act: Act): boolean => {
  if (act.act === 'answer') return act.item === item && !('asked' in act.reply)
  return (act.act === 'add' || act.act === 'copy') && act.item === item
}

/**
 * Whether a customer comes to rest with these acts: not between two questions of one garment. Then the queue's rows
 * are written; a garment that is left half told gets its own by `writeHalfTold`.
 */
export const rests = ({ place }: Followed, acts: readonly KeptAct[]): boolean =>
  place.at !== 'question' || place.item === 0 || !acts.every(({ act }) => isWithin(place.item, act))
