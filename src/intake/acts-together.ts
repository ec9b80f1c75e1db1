import type { Kysely } from 'kysely'
import type { Clock } from '../base/clock.ts'
import type { Settled } from '../store/group-commit.ts'
import { lockFreePiles } from '../store/rows.ts'
import type { Database, Db } from '../store/schema.ts'
import { pileBehind } from './rows.ts'
import { andThen } from './since.ts'
import { type Standing, type Stood, standing } from './stood.ts'
import { type Outcome, type Sent, type Taken, takeOnce } from './taking.ts'
import { type Remembered, writeActs, writeIfAsRemembered } from './write-acts.ts'

/** An act on the pile behind a link's key. */
export interface Ask {
  /** Of the key. */
  readonly hash: string
  readonly sent: Sent
}

export interface Answer {
  readonly outcome: Outcome
  /** The pile after it. */
  readonly stood: Stood
}

interface Turns extends Standing {
  readonly clock: Clock
}

/** What was taken on one pile, to be written at once. */
const both = (earlier: Taken | undefined, now: Taken): Taken =>
  earlier
    ? { ...now, acts: [...earlier.acts, ...now.acts], due: andThen(earlier.due, now.due) }
    : now

/**
 * Takes acts on piles as they are remembered, and writes them where they still stand so. Null: whatever is not simply
 * taken has to be asked of the store, for the pile may stand otherwise than it is remembered.
 */
export async function actAsRemembered(
  { memory, clock }: Turns,
  db: Kysely<Database>,
  asks: readonly Ask[],
): Promise<(Answer | null)[]> {
  const piles = new Map<string, Remembered>()

  // Who comes after one that has to wait waits too, so that acts on one pile stay in their order.
  const waits = new Set<string>()

  const take = ({ hash, sent }: Ask, before: Stood): Answer | null => {
    const { id } = before.row
    const earlier = piles.get(id)
    if (waits.has(id) || (earlier && earlier.hash !== hash)) return null
    try {
      const { outcome, ...now } = takeOnce(earlier?.taken.stood ?? before, sent, clock)
      if (outcome.again) return null
      piles.set(id, { hash, before, taken: both(earlier?.taken, now) })
      return { outcome, stood: now.stood }
    } catch {
      return null
    }
  }

  const answers = asks.map((ask) => {
    const before = memory.behind(ask.hash)
    const taken = before ? take(ask, before) : null
    if (before && !taken) waits.add(before.row.id)
    return taken
  })
  const written = await writeIfAsRemembered(db, [...piles.values()], clock())
  return answers.map((one) => (one && written.has(one.stood.row.id) ? one : null))
}

/**
 * Takes acts on any piles in their order, and writes them together; one that is refused leaves nothing and costs
 * the others nothing. Null: its pile is held elsewhere or its link is not there, so that it has to be asked alone.
 */
export async function actTogether(
  { knowledge, memory, clock }: Turns,
  trx: Db,
  asks: readonly Ask[],
): Promise<Settled<Answer | null>[]> {
  const held = await lockFreePiles(trx, [...new Set(asks.map(({ hash }) => hash))])
  const linked = new Map(held.map((pile) => [pile.key_hash, pile]))
  const taken = new Map<string, Taken>()

  const answer = async ({ hash, sent }: Ask): Promise<Answer | null> => {
    const link = linked.get(hash)
    if (!link) return null
    const row = pileBehind(link, clock)
    const before = taken.get(row.id)
    const stood = before?.stood ?? (await standing(trx, row, { knowledge, memory }))
    const { outcome, ...now } = takeOnce(stood, sent, clock)
    taken.set(row.id, both(before, now))
    return { outcome, stood: now.stood }
  }

  const settled: Settled<Answer | null>[] = []
  for (const ask of asks) {
    try {
      settled.push({ value: await answer(ask) })
    } catch (error) {
      settled.push({ error })
    }
  }
  await writeActs(trx, [...taken.values()])
  return settled
}
