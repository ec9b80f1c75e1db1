import { Failure } from '../base/failures.ts'
import { sha256 } from '../base/ids.ts'
import { derivedInOrder, type PhotoStore } from '../photo/keep.ts'
import { columnsIn, migrationsIn, type Within } from '../store/contents.ts'
import { migrate } from '../store/migrate.ts'
import { migrations as released } from '../store/migrations/list.ts'
import type { Store } from '../store/open.ts'
import type { Db } from '../store/schema.ts'
import type { TableName } from '../store/tables.ts'
import { erasePhotos, letGo, sweepPhotos } from './erase.ts'
import { type Erasure, erasedButThere, noteErasures } from './erasures.ts'
import type { Ending } from './format.ts'
import type { Backup } from './read-backup.ts'
import { firstFilled, type PlainRow, tablesThere, tallyOf, writeRows } from './rows.ts'

/** What a restore came to. Every row and every picture was read back and held against the backup. */
export interface Restored {
  readonly made: string
  readonly tables: Ending['tables']
  readonly photos: Ending['photos']
  /** Erased since the backup was made, and erased again. */
  readonly erased: { readonly piles: number; readonly photos: number }
}

export interface RestoreParts {
  readonly store: Store
  readonly photos: PhotoStore
  /** What was erased since, as far as it is known. */
  readonly ledger: readonly Erasure[]
}

/**
 * Brings a backup into a store that holds nothing yet. Rows come in one transaction, in the tables of the version that
 * wrote them, and are compared before it ends; then the store is brought up to this version. Throws `store_too_new`
 * for a backup of a later version, `store_not_empty` {table}, `restore_differs` {what}; then nothing stands in the
 * tables.
 */
export async function restore(parts: RestoreParts, backup: Backup): Promise<Restored> {
  const { store, photos, ledger } = parts
  const { beginning, ending } = backup
  await makeTables(store, beginning.migrations)
  await writePictures(photos, backup)
  const erased = await store.transaction(async (db) => {
    const within = { db, dialect: store.dialect }
    const names = await tablesThere(within)
    const filled = await firstFilled(db, names)
    if (filled) throw new Failure('store_not_empty', { table: filled })
    await writeTables(within, backup, names)
    await compareTables(db, names, ending)
    return eraseAgain(db, await knownErasures(within, ledger))
  })
  await migrate(store)
  await finishErasing(parts, erased)
  return {
    made: beginning.made,
    tables: ending.tables,
    photos: ending.photos,
    erased: { piles: erased.piles, photos: erased.photos.length },
  }
}

/** The tables of the version that made the backup. */
async function makeTables(store: Store, names: readonly string[]): Promise<void> {
  const unknown = names.findLast((name) => !Object.hasOwn(released, name))
  if (unknown) throw new Failure('store_too_new', { migration: unknown })
  const there = await migrationsIn(store)
  // Tables that are of this version already would not take the rows of an older one.
  if (there.length > 0 && there.join() !== names.toSorted().join()) {
    throw new Failure('store_not_empty', { table: 'kysely_migration' })
  }
  await migrate(store, Object.fromEntries(names.map((name) => [name, released[name]!])))
}

async function writePictures(photos: PhotoStore, backup: Backup): Promise<void> {
  for await (const { name, size, bytes } of backup.pictures()) {
    const derived = derivedInOrder.find((one) => one === size)
    if (!derived)
      throw new Failure('backup_altered', { file: backup.file, entry: `${name}.${size}` })
    await photos.put(name, derived, bytes)
    const back = await photos.open(name, derived)
    if (sha256(back) !== sha256(bytes)) {
      throw new Failure('restore_differs', { what: `${name}.${size}` })
    }
  }
}

async function writeTables(
  within: Within,
  backup: Backup,
  names: readonly TableName[],
): Promise<void> {
  const columns = new Map<TableName, string>()
  for await (const { table, rows } of backup.rows()) {
    const name = names.find((one) => one === table)
    if (!name) throw new Failure('backup_altered', { file: backup.file, entry: table })
    if (!columns.has(name)) columns.set(name, (await columnsIn(within, name)).sort().join())
    const other = rows.find((row) => Object.keys(row).sort().join() !== columns.get(name))
    if (other) throw new Failure('backup_altered', { file: backup.file, entry: table })
    for (const some of inPieces(rows)) await writeRows(within.db, name, some)
  }
}

/** As many rows as one statement of either store takes. */
function* inPieces(rows: readonly PlainRow[], most = 200): Generator<readonly PlainRow[]> {
  for (let at = 0; at < rows.length; at += most) yield rows.slice(at, at + most)
}

async function compareTables(
  db: Db,
  names: readonly TableName[],
  { tables }: Ending,
): Promise<void> {
  for (const name of names) {
    const told = tables[name]
    const found = await tallyOf(db, name)
    if (told?.rows !== found.rows || told.sum !== found.sum) {
      throw new Failure('restore_differs', { what: name })
    }
  }
}

/** What the caller knows of, and what the backup itself tells of: an erasure stands for good. */
async function knownErasures(within: Within, ledger: readonly Erasure[]): Promise<Erasure[]> {
  const has = (await tablesThere(within)).includes('erasure')
  const own = has ? await within.db.selectFrom('erasure').selectAll().execute() : []
  return [...own, ...ledger]
}

interface ErasedAgain {
  readonly piles: number
  readonly photos: readonly string[]
  /** Names of photos whose rows went with their piles. */
  readonly hashes: readonly string[]
}

/** Takes away what was erased, by columns that every version has. */
async function eraseAgain(db: Db, ledger: readonly Erasure[]): Promise<ErasedAgain> {
  const { piles, photos } = await erasedButThere(db, ledger)
  const hashes: string[] = []
  for (const id of piles) {
    const rows = await db.selectFrom('photo').select('hash').where('pile_id', '=', id).execute()
    hashes.push(...rows.map(({ hash }) => hash))
    await db.deleteFrom('pile').where('id', '=', id).execute()
  }
  for (const id of photos) {
    await db
      .updateTable('photo')
      .set((eb) => ({ removed_at: eb.fn.coalesce('removed_at', eb.ref('at')) }))
      .where('id', '=', id)
      .execute()
  }
  return { piles: piles.length, photos, hashes }
}

/** In the tables of this version: the ledger's own rows, what was read on photos, and their files. */
async function finishErasing(
  { store, photos, ledger }: RestoreParts,
  erased: ErasedAgain,
): Promise<void> {
  await store.transaction(async (db) => {
    await noteErasures(db, ledger)
    const times = new Map(ledger.map(({ what_hash, by_whom, at }) => [what_hash, { by_whom, at }]))
    for (const id of erased.photos) {
      const known = times.get(sha256(id))
      await erasePhotos(db, [id], known?.by_whom ?? 'time', known?.at ?? 0)
    }
    await letGo(db, erased.hashes, 0)
  })
  await sweepPhotos(store, photos)
}
