import { afterEach, beforeEach, expect, test } from 'vitest'
import { move, refuseUnfinished } from '../../src/keeping/move.ts'
import { lastingTables } from '../../src/store/tables.ts'
import { fillAll, newShelf, type Shelf } from '../help/backups.ts'
import { filledPhoto } from '../help/every-table.ts'
import { addPile } from '../help/rows.ts'
import { openBare, openSqlite, type TestStore } from '../help/stores.ts'

let shelf: Shelf
let from: TestStore
let to: TestStore
beforeEach(async () => {
  shelf = await newShelf()
  from = await openSqlite()
  to = await openBare()
})
afterEach(async () => {
  await from?.end()
  await to?.end()
  shelf?.remove()
})

const moved = () => move({ from: from.store, to: to.store, photos: shelf.photos, clock: () => 9 })

const held = async (store: TestStore['store']) => {
  const rows: unknown[] = []
  for (const name of lastingTables) rows.push(await store.db.selectFrom(name).selectAll().execute())
  return rows
}

test('a move takes every row along and looks for every photo', async () => {
  await fillAll(from.store, shelf)
  const { tables, resumed, photos } = await moved()
  expect(Object.values(tables).map(({ rows }) => rows)).toEqual(lastingTables.map(() => 1))
  expect({ resumed, photos }).toEqual({ resumed: false, photos: { there: 1, missing: 0 } })
  expect(await held(to.store)).toEqual(await held(from.store))
  await refuseUnfinished(to.store.db)

  // A second one would go over what has been written since.
  await expect(moved()).rejects.toMatchObject({ code: 'store_not_empty' })
})

test('one that was broken off is not served, and goes on when it is run again', async () => {
  await fillAll(from.store, shelf)
  await shelf.photos.remove(filledPhoto)
  const { photos } = shelf
  const broken = { ...photos, open: () => Promise.reject(new Error('the power went')) }
  const first = move({ from: from.store, to: to.store, photos: broken, clock: () => 9 })
  await expect(first).rejects.toThrow('the power went')
  await expect(refuseUnfinished(to.store.db)).rejects.toMatchObject({ code: 'store_unfinished' })
  await to.store.db.deleteFrom('pile').execute()

  const { resumed, photos: found } = await moved()
  expect({ resumed, found }).toEqual({ resumed: true, found: { there: 0, missing: 1 } })
  expect(await held(to.store)).toEqual(await held(from.store))
  await refuseUnfinished(to.store.db)
})

test('one into a store that went its own way meanwhile says so', async () => {
  await fillAll(from.store, shelf)
  await moved()
  await to.store.db.insertInto('unfinished').values({ work: 'move', since: 1 }).execute()
  await addPile(to.store.db, { id: 'another', number: 2 })
  await expect(moved()).rejects.toMatchObject({ code: 'restore_differs' })
  await expect(refuseUnfinished(to.store.db)).rejects.toMatchObject({ code: 'store_unfinished' })
})
