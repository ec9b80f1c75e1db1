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
async function projectWhole(db: Db, knowledge: Knowledge, row: PileRow): Promise<void> {
  const flow = await pinnedFlow(db, row.flow_hash, knowledge)
  await project(db, row, derivePile(knowledge, flow, row, await actsOf(db, row)))
}

/** So many piles are looked through at once, so that visitors never wait long for it. */
const atOnce = 2000

/** The last of the next piles by id; null: there are none. */
async function lastOfNext(db: Db, after: string): Promise<string | null> {
  const next = db
    .selectFrom('pile')
    .select('id')
    .where('id', '>', after)
    .orderBy('id')
    .limit(atOnce)
  const { last } = await db
    .selectFrom(next.as('next'))
    .select(({ fn }) => fn.max('id').as('last'))
    .executeTakeFirstOrThrow()
  return last
}

/** Piles whose rows are behind. They are found by their ids alone: SQLite would read every open one each time. */
const halfTold = (db: Db, span: { after: string; last: string; leftBefore: number }) =>
  db
    .selectFrom('pile')
    .innerJoin('standing', 'standing.pile_id', 'pile.id')
    .select('pile.id')
    .where('pile.id', '>', span.after)
    .where('pile.id', '<=', span.last)
    .where('pile.changed_at', '<', span.leftBefore)
    .whereRef('standing.seq', '<', 'pile.seq')
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
    const last = await lastOfNext(store.db, after)
    if (last === null) return written
    for (const { id } of await halfTold(store.db, { after, last, leftBefore })) {
      await store.transaction(async (trx) => {
        const row = await lockPile(trx, id)
        // What came back meanwhile is written as it goes on.
        if (row?.status === 'open' && row.changed_at < leftBefore) {
          await projectWhole(trx, knowledge, row)
          written += 1
        }
      })
      await nextTurn()
    }
    // A store of one file answers at once: visitors come in between.
    await nextTurn()
    after = last
  }
}
