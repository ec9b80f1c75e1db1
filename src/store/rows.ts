import { PostgresAdapter } from 'kysely'
import type { AccountRow, Db, PileRow } from './schema.ts'

const holdsRows = (trx: Db): boolean => trx.getExecutor().adapter instanceof PostgresAdapter

/**
 * The pile's row, held until the transaction ends, so that acts on one pile queue up. On SQLite a
 * transaction holds the whole file already.
 */
export async function lockPile(trx: Db, id: string): Promise<PileRow | undefined> {
  const pile = trx.selectFrom('pile').selectAll().where('id', '=', id)
  return (holdsRows(trx) ? pile.forUpdate() : pile).executeTakeFirst()
}

/** An account's row and those of every owner, held until the transaction ends, so that owners take turns. */
export async function lockPeople(trx: Db, id: string): Promise<AccountRow[]> {
  const people = trx
    .selectFrom('account')
    .selectAll()
    .where((eb) => eb.or([eb('id', '=', id), eb('role', '=', 'owner')]))
    .orderBy('id')
  return (holdsRows(trx) ? people.forUpdate() : people).execute()
}

/** 1, 2, 3 …, never the same twice; a number is spent only if the transaction ends well. */
export async function nextNumber(trx: Db, counter: 'pile' | 'receipt'): Promise<number> {
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
