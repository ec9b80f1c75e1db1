import { setImmediate as nextTurn } from 'node:timers/promises'
import type { Store } from '../store/open.ts'
import { lockPile } from '../store/rows.ts'
import type { Db, PileRow } from '../store/schema.ts'
import { pinnedFlow } from './flow-versions.ts'
import type { Knowledge } from './knowledge.ts'
import { derivePile } from './pile.ts'
import { actsOf } from './rows.ts'
import { project } from './standing.ts'

/** Writes the queue's rows of a pile that is held, from its acts. */
export async function projectWhole(db: Db, knowledge: Knowledge, row: PileRow): Promise<void> {
  const flow = await pinnedFlow(db, row.flow_hash, knowledge)
  await project(db, row, derivePile(knowledge, flow, row, await actsOf(db, row)))
}

const atOnce = 500

/** Open intakes whose rows are behind, by their id. */
const halfTold = (db: Db, { after, leftBefore }: { after: string; leftBefore: number }) =>
  db
    .selectFrom('pile')
    .innerJoin('standing', 'standing.pile_id', 'pile.id')
    .select('pile.id')
    .where('pile.status', '=', 'open')
    .where('pile.changed_at', '<', leftBefore)
    .where('pile.id', '>', after)
    .whereRef('standing.seq', '<', 'pile.seq')
    .orderBy('pile.id')
    .limit(atOnce)
    .execute()

/**
 * Writes the queue's rows of intakes that were left within a garment before a time, ms UTC. Returns how many. Any
 * number of processes may do so at once.
 */
export async function writeHalfTold(
  store: Store,
  knowledge: Knowledge,
  leftBefore: number,
): Promise<number> {
  let written = 0
  for (let after = ''; ; ) {
    const piles = await halfTold(store.db, { after, leftBefore })
    for (const { id } of piles) {
      await store.transaction(async (trx) => {
        const row = await lockPile(trx, id)
        // What came back meanwhile is written as it goes on.
        if (row?.status === 'open' && row.changed_at < leftBefore) {
          await projectWhole(trx, knowledge, row)
          written += 1
        }
      })
      // A store of one file answers at once: visitors come in between.
      await nextTurn()
    }
    if (piles.length < atOnce) return written
    after = piles.at(-1)!.id
  }
}
