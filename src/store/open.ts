import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { type Dialect, Kysely, sql, type Transaction } from 'kysely'
import { Failure } from '../base/failures.ts'
import { makeFolder } from '../base/make-folder.ts'
import { insideTransaction } from './inside.ts'
import { postgresDialect } from './postgres.ts'
import type { Database } from './schema.ts'
import { sqliteDialect } from './sqlite.ts'
import { atFault, isConflict } from './trouble.ts'

export interface Store {
  readonly db: Kysely<Database>
  readonly dialect: 'sqlite' | 'postgres'
  /**
   * All of `body` or nothing, durable once it resolves. After a conflict with another writer the
   * body runs again, so it may have no effect but on its transaction. Inside, use only `trx`.
   * Throws `busy` when conflicts go on, `store_unavailable` when the store is lost.
   */
  transaction<T>(body: (trx: Transaction<Database>) => Promise<T>): Promise<T>
  /** Reads everything as it stood at one moment, however others write meanwhile. `body` may write nothing. */
  snapshot<T>(body: (trx: Transaction<Database>) => Promise<T>): Promise<T>
  /** Resolves if the store answers and holds its tables. */
  ready(): Promise<void>
  close(): Promise<void>
}

export interface StoreSettings {
  /** A postgres:// address; without it the store is a file in `dataDir`. */
  readonly databaseUrl?: string | undefined
  readonly dataDir: string
}

export const storeFile = 'pieceworth.db'

/** Pauses before the second, third … try, in milliseconds. */
const pauses = [5, 20, 80, 200]

/** A store over any dialect of the two kinds. */
export function storeOver(dialect: Dialect, name: Store['dialect']): Store {
  const db = new Kysely<Database>({ dialect })
  const once = <T>(body: (trx: Transaction<Database>) => Promise<T>) =>
    db.transaction().execute((trx) => insideTransaction(() => body(trx)))

  return {
    db,
    dialect: name,
    async transaction(body) {
      for (const wait of pauses) {
        try {
          return await once(body)
        } catch (error) {
          if (!isConflict(error)) throw error
          await pause(wait)
        }
      }
      return await once(body)
    },
    snapshot: (body) =>
      db
        .transaction()
        .setIsolationLevel('repeatable read')
        .setAccessMode('read only')
        .execute((trx) => insideTransaction(() => body(trx))),
    async ready() {
      await db.selectFrom('counter').select('name').limit(1).execute()
    },
    close: () => db.destroy(),
  }
}

/** Opens the store and makes sure it answers. Throws `setting_invalid`, naming the setting and where it looked. */
export async function openStore({ databaseUrl, dataDir }: StoreSettings): Promise<Store> {
  return databaseUrl ? openPostgres(databaseUrl) : openSqlite(dataDir)
}

async function openSqlite(dataDir: string): Promise<Store> {
  const file = join(dataDir, storeFile)
  try {
    makeFolder(dataDir)
    return storeOver(sqliteDialect(file), 'sqlite')
  } catch (cause) {
    throw atFault('sqlite', file, cause)
  }
}

async function openPostgres(url: string): Promise<Store> {
  const { host, pathname } = address(url)
  const store = storeOver(postgresDialect(url), 'postgres')
  try {
    await sql`select 1`.execute(store.db)
    return store
  } catch (cause) {
    await store.close()
    // The address itself may hold a password.
    throw atFault('postgres', `${host}${pathname}`, cause)
  }
}

function address(url: string): URL {
  if (/^postgres(ql)?:/.test(url) && URL.canParse(url)) return new URL(url)
  throw new Failure('setting_invalid', {
    setting: 'DATABASE_URL',
    message: 'it must begin with postgres://',
  })
}
