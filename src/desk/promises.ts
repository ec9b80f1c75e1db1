import type { State } from '../custody/states.ts'
import type { Bench } from '../intake/shop.ts'
import type { Db } from '../store/schema.ts'
import {
  type CanMeet,
  canMeet,
  dayOf,
  earliestDay,
  fits,
  type Promised,
  startOf,
} from './capacity.ts'

const begun: readonly State[] = ['torn-down', 'stabilised', 'cut', 'sewn']
const backed: readonly State[] = ['stabilised', 'cut', 'sewn']

/**
 * Minutes that were worked already, by pile: garments that were taken apart, and those of them that were backed. How
 * far cutting and sewing have come is in no record by pieces, so that nothing of them is taken off.
 */
async function workedOff(
  db: Db,
  { teardown, stabilising }: Bench['minutes'],
): Promise<ReadonlyMap<string, number>> {
  const apart = await db
    .selectFrom('custody')
    .select(['custody.pile_id', 'custody.subject', 'custody.state'])
    .where('custody.kind', '=', 'garment')
    .where('custody.state', 'in', begun)
    .execute()
  const stabilised = await db
    .selectFrom('custody_move')
    .select(['pile_id', 'subject'])
    .distinct()
    .where('move', '=', 'stabilise')
    .execute()
  const key = (one: { readonly pile_id: string; readonly subject: string }) =>
    `${one.pile_id} ${one.subject}`
  const wasBacked = new Set(stabilised.map(key))
  const worked = new Map<string, number>()
  for (const one of apart) {
    const isBacked = backed.includes(one.state as State) && wasBacked.has(key(one))
    const minutes = teardown + (isBacked ? stabilising : 0)
    worked.set(one.pile_id, (worked.get(one.pile_id) ?? 0) + minutes)
  }
  return worked
}

/**
 * Everything the benches owe: what was accepted and is not done, less what was worked on it. `without`: a pile that is
 * left out.
 */
export async function promisesOf(
  db: Db,
  per: Bench['minutes'],
  without: string | null = null,
): Promise<Promised[]> {
  const worked = await workedOff(db, per)
  const rows = await db
    .selectFrom('offer')
    .innerJoin('pile', 'pile.id', 'offer.pile_id')
    .select(['pile.number', 'offer.pile_id', 'offer.promised_at', 'offer.minutes'])
    .where('offer.ended_at', 'is', null)
    .where('offer.accepted_at', 'is not', null)
    .where(({ not, exists, selectFrom }) =>
      not(
        exists(
          selectFrom('milestone')
            .select('milestone.id')
            .whereRef('milestone.pile_id', '=', 'offer.pile_id')
            .where('milestone.step', '=', 'done')
            .where('milestone.undone_at', 'is', null),
        ),
      ),
    )
    .where(({ not, exists, selectFrom }) =>
      not(
        exists(
          selectFrom('sign_off')
            .select('sign_off.id')
            .whereRef('sign_off.pile_id', '=', 'offer.pile_id')
            .where('sign_off.undone_at', 'is', null),
        ),
      ),
    )
    .execute()
  return rows
    .filter(({ pile_id }) => pile_id !== without)
    .map(({ number, pile_id, promised_at, minutes }) => ({
      pile: number,
      day: dayOf(promised_at),
      minutes: Math.max(0, minutes - (worked.get(pile_id) ?? 0)),
    }))
}

/** What can be promised to one pile beside all others. */
export interface Room {
  readonly minutes: number
  /** The beginning of a day, ms UTC; null: none in three years. */
  readonly earliest: number | null
  /** Whether the day it is needed can be met; null: there is no hurry. */
  readonly meets: CanMeet | null
  readonly fits: (promisedAt: number) => boolean
}

export function roomFor(
  bench: Bench,
  now: number,
  others: readonly Promised[],
  { minutes, needBy }: { readonly minutes: number; readonly needBy: number | null },
): Room {
  const today = dayOf(now)
  const day = earliestDay(bench, today, others, minutes)
  return {
    minutes,
    earliest: day === null ? null : startOf(day),
    meets: needBy === null ? null : canMeet(bench, day, dayOf(needBy)),
    fits: (promisedAt) =>
      dayOf(promisedAt) >= today + bench.lead_days &&
      fits(bench, today, others, { day: dayOf(promisedAt), minutes }),
  }
}
