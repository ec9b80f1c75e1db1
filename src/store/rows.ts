import { isServer, lookedUp, onGiven } from './given-rows.ts'
import type { Store } from './open.ts'
import type { AccountRow, Db, PileRow, Row } from './schema.ts'

/**
 * The pile's row, held until the transaction ends, so that acts on one pile queue up. On SQLite a
 * transaction holds the whole file already.
 */
export async function lockPile(trx: Db, id: string): Promise<PileRow | undefined> {
  const pile = trx.selectFrom('pile').selectAll().where('id', '=', id)
  return (isServer(trx) ? pile.forUpdate() : pile).executeTakeFirst()
}

/** A pile by one of its links. */
export type LinkedPile = PileRow & Pick<Row<'pile_link'>, 'key_hash' | 'expires_at' | 'revoked_at'>

const ofPile = Object.keys({
  id: true,
  number: true,
  language: true,
  flow_hash: true,
  status: true,
  seq: true,
  started_at: true,
  changed_at: true,
  confirmed_at: true,
} satisfies Record<keyof PileRow, true>).map((column) => `pile.${column}`)

const ofLink = ['key_hash', 'expires_at', 'revoked_at'].map((column) => `pile_link.${column}`)

const linked = onGiven({ given: { hash: 'text' } }, ({ given }, store) => linkedText(given, store))

const free = onGiven({ given: { hash: 'text' } }, ({ given }, store) =>
  linkedText(given, store, true),
)

function linkedText(given: string, store: Store['dialect'], held = false): string {
  const columns = [...ofPile, ...ofLink].join(', ')
  if (store === 'sqlite') {
    return `select ${columns} from ${given} join pile_link on pile_link.key_hash = given.hash
    join pile on pile.id = pile_link.pile_id`
  }
  return `select ${columns} from ${given}
  ${lookedUp('pile_link', { column: 'key_hash', is: 'given.hash' })}
  ${lookedUp('pile', { column: 'id', is: 'pile_link.pile_id', held })}`
}

const ofHashes = (hashes: readonly string[]) => ({ given: hashes.map((hash) => ({ hash })) })

/** The piles of links by the hashes of their keys. */
export async function linkedPiles(db: Db, hashes: readonly string[]): Promise<LinkedPile[]> {
  return (await db.executeQuery<LinkedPile>(linked(db, ofHashes(hashes)))).rows
}

/** The same, held as `lockPile` holds one; without those that another transaction holds just now. */
export async function lockFreePiles(trx: Db, hashes: readonly string[]): Promise<LinkedPile[]> {
  return (await trx.executeQuery<LinkedPile>(free(trx, ofHashes(hashes)))).rows
}

/** An account's row and those of every owner, held until the transaction ends, so that owners take turns. */
export async function lockPeople(trx: Db, id: string): Promise<AccountRow[]> {
  const people = trx
    .selectFrom('account')
    .selectAll()
    .where((eb) => eb.or([eb('id', '=', id), eb('role', '=', 'owner')]))
    .orderBy('id')
  return (isServer(trx) ? people.forUpdate() : people).execute()
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
