import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { sql } from 'kysely'
import { afterAll, beforeAll, beforeEach, describe, inject } from 'vitest'
import { newId } from '../../src/base/ids.ts'
import { migrate } from '../../src/store/migrate.ts'
import { openStore, type Store, type StoreSettings, storeOver } from '../../src/store/open.ts'
import { poolDialect } from '../../src/store/postgres.ts'
import { tableNames } from '../../src/store/tables.ts'
import { pglitePool } from './pglite.ts'

/** A store of one test file, and what it takes to open it again from elsewhere. */
export interface TestStore {
  readonly store: Store
  /** For opening it once more, here or in another process; null for PGlite, which has no address. */
  readonly settings: StoreSettings | null
  readonly end: () => Promise<void>
}

type Opener = (migrated: boolean) => Promise<TestStore>

const openers: readonly [name: string, open: Opener][] = [
  ['SQLite', openSqlite],
  ['PostgreSQL', openPostgres],
]

/**
 * The same tests over both stores: tables are there, and empty before each test.
 * `store` is called inside a test.
 */
export const eachStore = (what: string, tests: Tests): void => testsOn(openers, what, tests)

/** The same over SQLite alone, for tests in which the store does not matter. */
export const oneStore = (what: string, tests: Tests): void =>
  testsOn(openers.slice(0, 1), what, tests)

type Tests = (store: () => Store, name: string) => void

function testsOn(on: typeof openers, what: string, tests: Tests): void {
  describe.each(on)(`${what} (%s)`, (name, open) => {
    let opened: TestStore
    beforeAll(async () => {
      opened = await open(true)
    })
    beforeEach(() => empty(opened.store))
    afterAll(() => opened?.end())
    tests(() => opened.store, name)
  })
}

/** The same tests over both stores, each opening stores of its own, without tables. */
export function eachBareStore(
  what: string,
  tests: (open: () => Promise<TestStore>, name: string) => void,
): void {
  describe.each(openers)(`${what} (%s)`, (name, open) => {
    const opened: TestStore[] = []
    afterAll(async () => {
      for (const one of opened) await one.end()
    })
    tests(async () => {
      const one = await open(false)
      opened.push(one)
      return one
    }, name)
  })
}

export interface TestSchema {
  readonly databaseUrl: string
  drop(): Promise<void>
}

/**
 * A new, empty schema on the run's PostgreSQL server, at an address that servers and other processes
 * can open too; null where PGlite stands in, which has no address. Where it need not outlive the machine, commits do
 * not wait for the server's disk.
 */
export async function newSchema({ durable = true } = {}): Promise<TestSchema | null> {
  const server = inject('postgres')
  if (server === null) return null

  const schema = `${inject('schemas')}${newId().toLowerCase().replaceAll('-', '_')}`
  const url = new URL(server)
  url.searchParams.set(
    'options',
    [`-csearch_path=${schema}`, ...(durable ? [] : ['-csynchronous_commit=off'])].join(' '),
  )
  const databaseUrl = url.href
  await once(databaseUrl, `create schema ${schema}`)
  return { databaseUrl, drop: () => once(databaseUrl, `drop schema ${schema} cascade`) }
}

async function once(databaseUrl: string, statement: string): Promise<void> {
  const store = await openStore({ databaseUrl, dataDir: '' })
  try {
    await sql.raw(statement).execute(store.db)
  } finally {
    await store.close()
  }
}

/** A store of its own, in a new folder: for tests to which it does not matter what holds the rows. */
export async function openSqlite(migrated = true): Promise<TestStore> {
  const dataDir = mkdtempSync(join(tmpdir(), 'pieceworth-store-'))
  const store = await openStore({ dataDir })
  if (migrated) await migrate(store)
  return {
    store,
    settings: { dataDir },
    end: async () => {
      await store.close()
      rmSync(dataDir, { recursive: true, force: true })
    },
  }
}

/** PostgreSQL without tables. */
export const openBare = (): Promise<TestStore> => openPostgres(false)

async function openPostgres(migrated: boolean): Promise<TestStore> {
  const before = migrated ? withTables.pop() : undefined
  const schema = before ?? (await newSchema({ durable: false }))
  if (!schema) return openPglite(migrated)

  const settings = { databaseUrl: schema.databaseUrl, dataDir: '' }
  const store = await openStore(settings)
  if (migrated && !before) await migrate(store)
  return {
    store,
    settings,
    end: async () => {
      await store.close()
      if (migrated) withTables.push(schema)
      else await schema.drop()
    },
  }
}

/** Schemas that an earlier file of this worker made tables in and has left; the run drops them at its end. */
const withTables: TestSchema[] = []

async function openPglite(migrated: boolean): Promise<TestStore> {
  const store = storeOver(poolDialect(await pglitePool()), 'postgres')
  if (migrated) await migrate(store)
  return { store, settings: null, end: () => store.close() }
}

/** Children before parents, so that no reference is broken on the way. */
const emptied = tableNames.toReversed()

async function empty({ db, dialect }: Store): Promise<void> {
  if (dialect === 'postgres') {
    // `truncate` makes a new file for each table and index: on few rows a hundred times as slow.
    const deletes = emptied.map((t) => sql`${sql.ref(`no_${t}`)} as (delete from ${sql.table(t)})`)
    await sql`with ${sql.join(deletes)} select 1`.execute(db)
    return
  }
  for (const table of emptied) await db.deleteFrom(table).execute()
}
