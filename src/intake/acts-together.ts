import type { Clock } from '../base/clock.ts'
import { sha256 } from '../base/ids.ts'
import type { Settled } from '../store/group-commit.ts'
import { lockFreePiles } from '../store/rows.ts'
import type { Db } from '../store/schema.ts'
import { pileBehind } from './rows.ts'
import { type Standing, type Stood, standing } from './stood.ts'
import { type Outcome, type Sent, type Taken, takeOnce } from './taking.ts'
import { writeActs } from './write-acts.ts'

/** An act on the pile behind a link's key. */
export interface Ask {
  readonly key: string
  readonly sent: Sent
}

export interface Answer {
  readonly outcome: Outcome
  /** The pile after it. */
  readonly stood: Stood
}

/**
 * Takes acts on any piles in their order, and writes them together; one that is refused leaves nothing and costs
 * the others nothing. Null: its pile is held elsewhere or its link is not there, so that it has to be asked alone.
 */
export async function actTogether(
  { knowledge, memory, clock }: Standing & { readonly clock: Clock },
  trx: Db,
  asks: readonly Ask[],
): Promise<Settled<Answer | null>[]> {
  const hashes = asks.map(({ key }) => sha256(key))
  const held = await lockFreePiles(trx, [...new Set(hashes)])
  const linked = new Map(held.map((pile) => [pile.key_hash, pile]))
  const taken = new Map<string, Taken>()

  const answer = async ({ sent }: Ask, hash: string): Promise<Answer | null> => {
    const link = linked.get(hash)
    if (!link) return null
    const row = pileBehind(link, clock)
    const before = taken.get(row.id)
    const stood = before?.stood ?? (await standing(trx, row, { knowledge, memory }))
    const { outcome, ...now } = takeOnce(knowledge, stood, sent, clock)
    taken.set(row.id, { ...now, acts: [...(before?.acts ?? []), ...now.acts] })
    return { outcome, stood: now.stood }
  }

  const settled: Settled<Answer | null>[] = []
  for (const [nth, ask] of asks.entries()) {
    try {
      settled.push({ value: await answer(ask, hashes[nth]!) })
    } catch (error) {
      settled.push({ error })
    }
  }
  await writeActs(trx, [...taken.values()])
  return settled
}
