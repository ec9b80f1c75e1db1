import { Failure } from '../base/failures.ts'
import { type AgreedDiff, diffOf, isNothing } from '../intake/agreed-diff.ts'
import { lastFigures } from '../intake/agreement.ts'
import type { Bench } from '../intake/shop.ts'
import type { Estimate } from '../quilt/estimate.ts'
import type { Settled } from '../quilt/settled.ts'
import { workMinutes } from '../quilt/work-minutes.ts'
import type { Db, PileRow } from '../store/schema.ts'
import { priceWith, verdictsOf } from './consequences.ts'
import { promisesOf, type Room, roomFor } from './promises.ts'
import type { Review } from './review.ts'

/** The pile of an id or number that its customer has confirmed once, wherever it is now. Throws `not_found`. */
export async function pileOnceConfirmed(db: Db, reference: string): Promise<PileRow> {
  const number = /^\d{1,9}$/.test(reference) ? Number(reference) : null
  const row = await db
    .selectFrom('pile')
    .selectAll()
    .where((eb) => (number === null ? eb('id', '=', reference) : eb('number', '=', number)))
    .where('confirmed_at', 'is not', null)
    .executeTakeFirst()
  if (!row) throw new Failure('not_found')
  return row
}

/** What a pile that was confirmed again changes; null: it was not, or nothing differs. */
export async function changedOf(db: Db, pileId: string): Promise<AgreedDiff | null> {
  const [now, before] = await lastFigures(db, pileId)
  if (!now || !before) return null
  const diff = diffOf(before, now)
  return isNothing(diff) ? null : diff
}

/** A pile's price with the decisions so far, and the room that the benches have for it. */
export interface Offering {
  readonly estimate: Estimate
  readonly room: Room
}

/** Null: nothing of it can be priced. */
export async function offeringOf(
  db: Db,
  bench: Bench,
  now: number,
  { row, pile, garments }: Pick<Review, 'row' | 'pile' | 'garments'>,
  settled: Settled | null,
): Promise<Offering | null> {
  const estimate = priceWith(pile, verdictsOf(garments), settled)
  if (!estimate) return null
  const minutes = workMinutes(estimate.lines, bench.minutes)
  const others = await promisesOf(db, bench.minutes, row.id)
  return { estimate, room: roomFor(bench, now, others, { minutes, needBy: pile.needBy }) }
}
