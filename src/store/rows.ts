import { PostgresAdapter } from 'kysely'
import type { Db, PileRow } from './schema.ts'

/**
 * The pile's row, held until the transaction ends, so that acts on one pile queue up. On SQLite a
 * transaction holds the whole file already.
 */
export async function lockPile(trx: Db, id: string): Promise<PileRow | undefined> {
  const pile = trx.selectFrom('pile').selectAll().where('id', '=', id)
  const holdsRows = trx.getExecutor().adapter instanceof PostgresAdapter
  return (holdsRows ? pile.forUpdate() : pile).executeTakeFirst()
}

/** 1, 2, 3 …, never the same twice; a number is spent only if the transaction ends well. */
export async function nextNumber(trx: Db, counter: 'pile'): Promise<number> {
  const { value } = await trx
    .insertInto('counter')
    .values({ name: counter, value: 1 })
    .onConflict((c) =>
      c.column('name').doUpdateSet((eb) => ({ value: eb('counter.value', '+', 1) })),
    )
    .returning('value')
    .executeTakeFirstOrThrow()
  return value
}
