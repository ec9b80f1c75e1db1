import type { Knowledge } from '../../src/intake/knowledge.ts'
import { derivePile } from '../../src/intake/pile.ts'
import { entriesOf } from '../../src/intake/rows.ts'
import { project } from '../../src/intake/standing.ts'
import type { Store } from '../../src/store/open.ts'
import type { PileRow } from '../../src/store/schema.ts'

/** The rows of a pile that the queue reads. */
export const rowsOfPile = async ({ db }: Store, pileId: string) => ({
  standing: await db
    .selectFrom('standing')
    .selectAll()
    .where('pile_id', '=', pileId)
    .executeTakeFirstOrThrow(),
  garments: await db
    .selectFrom('garment')
    .selectAll()
    .where('pile_id', '=', pileId)
    .orderBy('item')
    .execute(),
})

/** Writes them anew from the acts alone, as if they had been lost. */
export const rebuildPile = (store: Store, knowledge: Knowledge, row: PileRow): Promise<void> =>
  store.transaction(async (trx) => {
    await trx.deleteFrom('garment').where('pile_id', '=', row.id).execute()
    await trx.deleteFrom('standing').where('pile_id', '=', row.id).execute()
    const entries = await entriesOf(trx, row.id)
    await project(trx, row, derivePile(knowledge, knowledge.flow, row, entries))
  })
