import { PostgresAdapter } from 'kysely'
import type { AccountRow, Db, PileRow, Row } from './schema.ts'

const holdsRows = (trx: Db): boolean => trx.getExecutor().adapter instanceof PostgresAdapter

/**
 * The pile's row, held until the transaction ends, so that acts on one pile queue up. On SQLite a
 * transaction holds the whole file already.
 */
export async function lockPile(trx: Db, id: string): Promise<PileRow | undefined> {
  const pile = trx.selectFrom('pile').selectAll().where('id', '=', id)
  return (holdsRows(trx) ? pile.forUpdate() : pile).executeTakeFirst()
}

/** A pile by one of its links. */
export type LinkedPile = PileRow & Pick<Row<'pile_link'>, 'key_hash' | 'expires_at' | 'revoked_at'>

const linked = (db: Db) =>
  db
    .selectFrom('pile_link')
    .innerJoin('pile', 'pile.id', 'pile_link.pile_id')
    .selectAll('pile')
    .select(['pile_link.key_hash', 'pile_link.expires_at', 'pile_link.revoked_at'])

/** The piles of links by the hashes of their keys. */
export const linkedPiles = (db: Db, hashes: readonly string[]): Promise<LinkedPile[]> =>
  linked(db).where('pile_link.key_hash', 'in', hashes).execute()

/** The same, held as `lockPile` holds one; without those that another transaction holds just now. */
export async function lockFreePiles(trx: Db, hashes: readonly string[]): Promise<LinkedPile[]> {
  const piles = linked(trx).where('pile_link.key_hash', 'in', hashes)
  return (holdsRows(trx) ? piles.forUpdate('pile').skipLocked() : piles).execute()
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

/** As many rows as one statement of either store takes. */
const mostRows = 500

export function inPieces<T>(rows: readonly T[]): T[][] {
  const pieces = Math.ceil(rows.length / mostRows)
  return Array.from({ length: pieces }, (_, n) => rows.slice(n * mostRows, (n + 1) * mostRows))
}
