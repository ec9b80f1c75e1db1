import { type Migration, sql } from 'kysely'
import { expect, test } from 'vitest'
import { tablesIn } from '../../src/store/contents.ts'
import { migrate } from '../../src/store/migrate.ts'
import { migrations } from '../../src/store/migrations/list.ts'
import type { StoreSettings } from '../../src/store/open.ts'
import { startChild } from '../help/child.ts'
import { eachBareStore } from '../help/stores.ts'

const adding = (table: string): Migration => ({
  up: (db) => db.schema.createTable(table).addColumn('id', 'text').execute(),
})

eachBareStore('migrating', (open) => {
  test('an empty store gets its tables, and a second time changes nothing', async () => {
    const { store } = await open()
    await expect(store.ready()).rejects.toThrow()

    await migrate(store)
    await store.ready()
    const once = await tablesIn(store)
    expect([...once]).toEqual(expect.arrayContaining(['act', 'pile', 'photo', 'account']))

    await migrate(store)
    expect(await tablesIn(store)).toEqual(once)
  })

  test('a newer migration is added to what is there', async () => {
    const { store } = await open()
    await migrate(store)
    await migrate(store, { ...migrations, '9000-more': adding('more') })
    expect(await tablesIn(store)).toContain('more')
  })

  test('photos that were kept before their cloth was looked at stay, and have none', async () => {
    const { store } = await open()
    const first = '0001-intake-and-desk'
    await migrate(store, { [first]: migrations[first]! })
    const at = Date.UTC(2026, 5, 1)
    const pile = { id: 'p', number: 1, language: 'en', flow_hash: 'f', status: 'open' as const }
    await store.db
      .insertInto('flow_version')
      .values({ hash: 'f', body: '{}', first_used_at: at })
      .execute()
    await store.db
      .insertInto('pile')
      .values({ ...pile, seq: 0, started_at: at, changed_at: at })
      .execute()
    const photo = { id: 'a', pile_id: 'p', hash: 'h', width: 640, height: 480, bytes: 9, at }
    await store.db
      .insertInto('photo')
      .values({ ...photo, kept: 1 })
      .execute()

    await migrate(store)
    const rows = await store.db.selectFrom('photo').selectAll().execute()
    expect(rows).toMatchObject([{ ...photo, cloth: null }])
  })

  test('a migration that fails leaves nothing of itself', async () => {
    const { store } = await open()
    const half: Migration = {
      async up(db) {
        await adding('half').up(db)
        throw new Error('power cut')
      },
    }
    await expect(migrate(store, { '0001-half': half })).rejects.toThrow('power cut')
    expect(await tablesIn(store)).not.toContain('half')
  })

  test('a store that a newer version has changed is left alone', async () => {
    const { store } = await open()
    await migrate(store, { ...migrations, '9000-more': adding('more') })
    await expect(migrate(store)).rejects.toMatchObject({
      code: 'store_too_new',
      details: { migration: '9000-more' },
    })
  })

  test('a clock that was set back between two versions does not matter', async () => {
    const { store } = await open()
    const newer = { ...migrations, '9000-more': adding('more') }
    await migrate(store, newer)
    await sql`update kysely_migration set timestamp = '2001-01-01T00:00:00.000Z'
      where name = '9000-more'`.execute(store.db)
    await migrate(store, { ...newer, '9001-yet-more': adding('yet_more') })
    expect(await tablesIn(store)).toContain('yet_more')
  })

  test('it looks at no tables but its own', async () => {
    const [one, other] = [await open(), await open()]
    await migrate(one.store)
    expect(await other.store.db.introspection.getTables()).toEqual([])
    expect((await one.store.db.introspection.getTables()).map(({ name }) => name)).toContain('act')
  })

  test('two that start at once do not clash', async () => {
    const { store, settings } = await open()
    await (settings ? startTwo(settings) : Promise.all([migrate(store), migrate(store)]))
    const { rows } = await sql`select name from kysely_migration`.execute(store.db)
    expect(rows).toEqual(Object.keys(migrations).map((name) => ({ name })))
  })
})

/** Two processes, each of which migrates as soon as it can. */
async function startTwo(settings: StoreSettings): Promise<void> {
  const children = [1, 2].map(() =>
    startChild('test/help/migrating.ts', [JSON.stringify(settings)]),
  )
  for (const child of children) expect(await child.ended()).toMatchObject({ code: 0, stderr: '' })
}
