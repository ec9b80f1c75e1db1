import { execFileSync } from 'node:child_process'
import { mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { setImmediate as turn } from 'node:timers/promises'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { sha256 } from '../../src/base/ids.ts'
import { erasureOf } from '../../src/keeping/erasures.ts'
import { tallyOf } from '../../src/keeping/rows.ts'
import { migrationsIn } from '../../src/store/contents.ts'
import { migrate } from '../../src/store/migrate.ts'
import { migrations } from '../../src/store/migrations/list.ts'
import { openStore, type Store } from '../../src/store/open.ts'
import { lastingTables } from '../../src/store/tables.ts'
import { backUpTo, fillAll, newShelf, restoreFrom, type Shelf } from '../help/backups.ts'
import { filledPhoto } from '../help/every-table.ts'
import { releasedStores, releases } from '../help/released.ts'
import { addPile } from '../help/rows.ts'
import { eachBareStore, openBare, openSqlite, type TestStore } from '../help/stores.ts'

let from: Shelf
let to: Shelf
let opened: TestStore[]
beforeEach(async () => {
  from = await newShelf()
  to = await newShelf()
  opened = []
})
afterEach(async () => {
  for (const one of opened) await one.end()
  from.remove()
  to.remove()
})

const keep = async (one: Promise<TestStore>): Promise<Store> => {
  opened.push(await one)
  return opened.at(-1)!.store
}

const empties = [
  ['SQLite', () => openSqlite(false)],
  ['PostgreSQL', openBare],
] as const

eachBareStore('a backup', (open) => {
  let own: TestStore
  let store: Store
  beforeEach(async () => {
    own = await open()
    store = own.store
    await migrate(store)
  })

  test.each(empties)('comes back whole into %s, every row and every picture', async (_, empty) => {
    await fillAll(store, from)
    const made = await backUpTo(store, from)
    expect(Object.keys(made.tables)).toEqual(lastingTables)
    expect(Object.values(made.tables).map(({ rows }) => rows)).toEqual(lastingTables.map(() => 1))
    expect(made.photos).toEqual({ photos: 1, pictures: 4, missing: 0 })

    const target = await keep(empty())
    const restored = await restoreFrom(from.file('backup.tar'), target, to)
    expect(restored).toMatchObject({ tables: made.tables, photos: made.photos })
    for (const table of lastingTables) {
      expect(await target.db.selectFrom(table).selectAll().execute(), table).toEqual(
        await store.db.selectFrom(table).selectAll().execute(),
      )
    }
    expect(await target.db.selectFrom('session').selectAll().execute()).toEqual([])
    for (const size of ['full', 'view', 'thumb', 'cloth'] as const) {
      const back = await to.photos.open(filledPhoto, size)
      expect(sha256(back)).toBe(sha256(await from.photos.open(filledPhoto, size)))
    }
  })

  test('holds rows as they stood at one moment, however others write meanwhile', async () => {
    await addPile(store.db)
    let going = true
    let seq = 0
    // By a connection of its own, as a server beside the backup has one; PGlite has one alone.
    const beside = own.settings ? await openStore(own.settings) : store
    const write = async () => {
      while (going) {
        await turn()
        await beside.transaction(async (trx) => {
          const at = seq + 1
          const row = { pile_id: 'pile-1', seq: at, idem: `i${at}`, who: 'customer' as const }
          await trx
            .insertInto('act')
            .values({ ...row, act: '{}', at })
            .execute()
          await trx.updateTable('pile').set({ seq: at }).where('id', '=', 'pile-1').execute()
          seq = at
        })
      }
    }
    const writing = write()
    for (let n = 0; n < 5; n += 1) {
      const target = await keep(openSqlite(false))
      await backUpTo(store, from, `${n}.tar`)
      await restoreFrom(from.file(`${n}.tar`), target, to)
      const pile = await target.db.selectFrom('pile').select('seq').executeTakeFirstOrThrow()
      expect(await tallyOf(target.db, 'act')).toMatchObject({ rows: pile.seq })
    }
    going = false
    await writing
    if (beside !== store) await beside.close()
    expect(seq).toBeGreaterThan(0)
  })

  test('of a photo that was erased since brings back neither picture nor what was read on it', async () => {
    await fillAll(store, from)
    await backUpTo(store, from)
    const target = await keep(openSqlite(false))
    const ledger = [erasureOf('photo', 'photo-id', 'staff', 5)]
    const { erased } = await restoreFrom(from.file('backup.tar'), target, to, ledger)
    expect(erased).toEqual({ piles: 0, photos: 1 })
    const photo = await target.db.selectFrom('photo').selectAll().executeTakeFirstOrThrow()
    expect(photo).toMatchObject({ hash: '', cloth: null, label: null, look: null })
    expect(photo.removed_at).not.toBeNull()
    expect(readdirSync(join(to.folder, 'photos'))).toEqual([])
  })
})

describe('a backup', () => {
  let store: Store
  beforeEach(async () => {
    store = await keep(openSqlite())
  })

  test('of many rows is read page by page, and none is left out', async () => {
    await addPile(store.db)
    const row = { pile_id: 'pile-1', who: 'customer' as const, act: '"é"', at: 1 }
    for (let n = 0; n < 1001; n += 91) {
      const some = Array.from({ length: 91 }, (_, i) => ({ ...row, seq: n + i, idem: `i${n + i}` }))
      await store.db.insertInto('act').values(some).execute()
    }
    const { tables } = await backUpTo(store, from)
    expect(tables.act?.rows).toBe(1001)
    const target = await keep(openSqlite(false))
    await restoreFrom(from.file('backup.tar'), target, to)
    expect(await tallyOf(target.db, 'act')).toEqual(tables.act)
  })

  test('is refused where anything stands already, and changes nothing there', async () => {
    await fillAll(store, from)
    await backUpTo(store, from)
    const target = await keep(openSqlite())
    await addPile(target.db)
    const refused = restoreFrom(from.file('backup.tar'), target, to)
    await expect(refused).rejects.toMatchObject({
      code: 'store_not_empty',
      details: { table: 'flow_version' },
    })
    expect(await tallyOf(target.db, 'pile')).toMatchObject({ rows: 1 })
    expect(await tallyOf(target.db, 'account')).toMatchObject({ rows: 0 })
  })

  test('brings nothing back that was erased since', async () => {
    await fillAll(store, from)
    await addPile(store.db, { id: 'pile-2', number: 2, flow_hash: 'flow_version-hash' })
    await backUpTo(store, from)
    const target = await keep(openSqlite(false))
    const ledger = [erasureOf('pile', 'pile-id', 'customer', 5)]
    const { erased } = await restoreFrom(from.file('backup.tar'), target, to, ledger)
    expect(erased).toEqual({ piles: 1, photos: 0 })
    expect(await target.db.selectFrom('pile').select('id').execute()).toEqual([{ id: 'pile-2' }])
    expect(await tallyOf(target.db, 'photo')).toMatchObject({ rows: 0 })
    expect(readdirSync(join(to.folder, 'photos'))).toEqual([])
    expect(await target.db.selectFrom('erasure').selectAll().execute()).toContainEqual(ledger[0])
  })

  test('tells of photos whose files are lost, and keeps the rest', async () => {
    await fillAll(store, from)
    await from.photos.remove(filledPhoto)
    const { photos } = await backUpTo(store, from)
    expect(photos).toEqual({ photos: 0, pictures: 0, missing: 1 })
    const target = await keep(openSqlite(false))
    await restoreFrom(from.file('backup.tar'), target, to)
    expect(await tallyOf(target.db, 'photo')).toMatchObject({ rows: 1 })
  })

  test('is for its owner alone, writes over nothing, and leaves no draft', async () => {
    await fillAll(store, from)
    const { bytes, sha256: sum } = await backUpTo(store, from)
    const file = from.file('backup.tar')
    expect(statSync(file).mode & 0o777).toBe(0o600)
    expect([bytes, sum]).toEqual([statSync(file).size, sha256(readFileSync(file))])
    await expect(backUpTo(store, from)).rejects.toMatchObject({ code: 'file_there' })
    const nowhere = backUpTo(store, from, 'no-such-folder/backup.tar')
    await expect(nowhere).rejects.toMatchObject({ code: 'file_not_written' })
    expect(readdirSync(from.folder).sort()).toEqual(['backup.tar', 'photos'])
  })

  test('is read and checked by the tools of the system: tar, and sha256sum of GNU coreutils', async () => {
    await fillAll(store, from)
    await backUpTo(store, from)
    mkdirSync(from.file('out'))
    const options = { cwd: from.file('out'), encoding: 'utf8' as const }
    execFileSync('tar', ['-xf', from.file('backup.tar')], options)
    const sums = readdirSync(from.file('out/sums')).map((name) => `sums/${name}`)
    const checked = execFileSync('sha256sum', ['--check', '--strict', ...sums], options)
    const lines = checked.trim().split('\n')
    expect(lines).toHaveLength(lastingTables.length + 4 + 2)
    expect(lines.filter((line) => !line.endsWith(': OK'))).toEqual([])
    writeFileSync(from.file('out/end.json'), '{}')
    expect(() =>
      execFileSync('sha256sum', ['--check', ...sums], { ...options, stdio: 'pipe' }),
    ).toThrow()
  })
})

test('a store without tables has nothing to keep', async () => {
  const store = await keep(openSqlite(false))
  await expect(backUpTo(store, from)).rejects.toMatchObject({ code: 'nothing_kept' })
  expect(readdirSync(from.folder)).toEqual(['photos'])
})

describe.each(releases)('a backup of release %s', (release) => {
  test.each(releasedStores)('(%s) is restored and brought up to this version', async (_, open) => {
    const old = await keep(open(release))
    const before = await migrationsIn(old)
    expect(before.length).toBeLessThan(Object.keys(migrations).length)
    const { tables } = await backUpTo(old, from)
    for (const [name, empty] of empties) {
      const target = await keep(empty())
      await restoreFrom(from.file('backup.tar'), target, to)
      expect(await migrationsIn(target), name).toEqual(Object.keys(migrations).sort())
      expect(await tallyOf(target.db, 'act'), name).toEqual(tables.act)
    }
  })
})
