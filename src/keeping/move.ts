import type { Clock } from '../base/clock.ts'
import { Failure } from '../base/failures.ts'
import { sha256 } from '../base/ids.ts'
import { isPhotoName, type PhotoStore } from '../photo/keep.ts'
import { migrate } from '../store/migrate.ts'
import type { Store } from '../store/open.ts'
import type { Db } from '../store/schema.ts'
import { lastingTables, type TableName } from '../store/tables.ts'
import { firstFilled, pagesOf, type Tallies, type Tally, tallyOf, writeRows } from './rows.ts'

/** What a move came to; both stores hold just this. */
export interface Moved {
  readonly tables: Tallies
  /** True where it went on from one that was broken off. */
  readonly resumed: boolean
  /** Photos that the rows tell of, as they are found where photos are kept. */
  readonly photos: { readonly there: number; readonly missing: number }
}

export interface MoveParts {
  readonly from: Store
  readonly to: Store
  readonly photos: PhotoStore
  readonly clock: Clock
}

/**
 * Copies everything that lasts from one store into another, page by page, and compares both. Broken off, it is run
 * again and goes on; until it has ended the store is not served. Nobody else may write to either. Throws
 * `store_not_empty` where the other holds rows that no move brought, `restore_differs` where they differ in the end.
 */
export async function move({ from, to, photos, clock }: MoveParts): Promise<Moved> {
  await migrate(from)
  await migrate(to)
  const resumed = await begin(to, clock())
  const tables: Partial<Record<TableName, Tally>> = {}
  for (const name of lastingTables) tables[name] = await copyTable(from.db, to.db, name)
  const found = await lookForPhotos(to.db, photos)
  await to.db.deleteFrom('unfinished').where('work', '=', 'move').execute()
  return { tables, resumed, photos: found }
}

/** Marks the store as one that is being filled. True: it was begun before. */
const begin = (to: Store, at: number): Promise<boolean> =>
  to.transaction(async (db) => {
    const begun = await db.selectFrom('unfinished').select('work').execute()
    if (begun.length > 0) return true
    const filled = await firstFilled(db, lastingTables)
    if (filled) throw new Failure('store_not_empty', { table: filled })
    await db.insertInto('unfinished').values({ work: 'move', since: at }).execute()
    return false
  })

async function copyTable(from: Db, to: Db, name: TableName): Promise<Tally> {
  const told = await tallyOf(from, name)
  const same = ({ rows, sum }: Tally) => rows === told.rows && sum === told.sum
  if (same(await tallyOf(to, name))) return told
  for await (const page of pagesOf(from, name)) await writeRows(to, name, page, { onceMore: true })
  if (!same(await tallyOf(to, name))) throw new Failure('restore_differs', { what: name })
  return told
}

async function lookForPhotos(db: Db, photos: PhotoStore): Promise<Moved['photos']> {
  const found = { there: 0, missing: 0 }
  let last = ''
  for await (const page of pagesOf(db, 'photo')) {
    for (const { hash, removed_at } of page) {
      if (removed_at !== null || hash === last) continue
      last = String(hash)
      const whole =
        isPhotoName(last) &&
        (await photos.open(last, 'full').then(
          (bytes) => sha256(bytes) === last,
          (error: unknown) => {
            if (error instanceof Failure && error.code === 'not_found') return false
            throw error
          },
        ))
      found[whole ? 'there' : 'missing'] += 1
    }
  }
  return found
}

/** Throws `store_unfinished` where a move into the store has not ended. */
export async function refuseUnfinished(db: Db): Promise<void> {
  const [begun] = await db.selectFrom('unfinished').select('work').execute()
  if (begun) throw new Failure('store_unfinished', { work: begun.work })
}
