import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { DatabaseSync } from '@photostructure/sqlite'
import { sql } from 'kysely'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { Failure } from '../../src/base/failures.ts'
import { openStore, type Store, storeFile } from '../../src/store/open.ts'
import { isTaken } from '../../src/store/trouble.ts'

let folder: string
let store: Store
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'pieceworth-trouble-'))
  store = await openStore({ dataDir: folder })
  await sql`create table kept (id text primary key, n integer)`.execute(store.db)
})
afterEach(async () => {
  await store.close()
  rmSync(folder, { recursive: true, force: true })
})

const write = (id: string) => sql`insert into kept values (${id}, 1)`.execute(store.db)
/** The same, as a statement that gives rows: the driver tells what went wrong in another way. */
const writeAndRead = (id: string) =>
  sql`insert into kept values (${id}, 1) returning n`.execute(store.db)

const kept = async () =>
  (await sql<{ id: string }>`select id from kept order by id`.execute(store.db)).rows.length

test.each([
  ['writes', write],
  ['writes and reads', writeAndRead],
])(
  'a disk without room is told to whoever %s, nothing is half kept, and it goes on when there is room',
  async (_, work) => {
    const { rows } = await sql<{ page_count: number }>`pragma page_count`.execute(store.db)
    // SQLite fails in the same way where a file may grow no more (sqlite.org/pragma.html#pragma_max_page_count).
    await sql.raw(`pragma max_page_count = ${rows[0]!.page_count}`).execute(store.db)
    await expect(work('x'.repeat(20_000))).rejects.toMatchObject({
      code: 'store_unavailable',
      status: 503,
    })
    await expect(
      store.transaction(async (trx) => {
        await sql`insert into kept values ('first', 1)`.execute(trx)
        await sql`insert into kept values (${'y'.repeat(20_000)}, 1) returning n`.execute(trx)
      }),
    ).rejects.toMatchObject({ code: 'store_unavailable' })
    expect(await kept()).toBe(0)
    await sql.raw('pragma max_page_count = 100000').execute(store.db)
    await work('x'.repeat(20_000))
    expect(await kept()).toBe(1)
  },
)

test.each([
  ['writes', write],
  ['writes and reads', writeAndRead],
])('records that another holds are busy for whoever %s', async (_, work) => {
  const other = new DatabaseSync(join(folder, storeFile), { timeout: 0 })
  try {
    other.exec('begin immediate')
    await expect(work('one')).rejects.toMatchObject({ code: 'busy', status: 503 })
    other.exec('rollback')
    await work('one')
  } finally {
    other.close()
  }
})

test.each([
  ['writes', write],
  ['writes and reads', writeAndRead],
])('what is there already is told to whoever %s it again', async (_, work) => {
  await work('one')
  const error = await work('one').catch((thrown: unknown) => thrown)
  expect(isTaken(error)).toBe(true)
})

test('a transaction that SQLite has undone by itself fails for what went wrong, and the next one is as ever', async () => {
  await expect(
    store.transaction(async (trx) => {
      await sql`insert into kept values ('lost', 1)`.execute(trx)
      // What a full disk makes SQLite do (sqlite.org/lang_transaction.html).
      await sql`rollback`.execute(trx)
      throw new Failure('store_unavailable')
    }),
  ).rejects.toMatchObject({ code: 'store_unavailable' })
  await store.transaction(async (trx) => {
    await sql`insert into kept values ('one', 1)`.execute(trx)
  })
  expect(await kept()).toBe(1)
})

test('a mistake in a statement is none of them', async () => {
  const error = await sql
    .raw('insrt into kept')
    .execute(store.db)
    .catch((thrown: unknown) => thrown)
  expect(error).toBeInstanceOf(Error)
  expect(error).not.toHaveProperty('status')
  expect(isTaken(error)).toBe(false)
})
