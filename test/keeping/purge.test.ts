import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { days } from '../../src/base/clock.ts'
import { sha256 } from '../../src/base/ids.ts'
import { erasePhotos, sweepPhotos } from '../../src/keeping/erase.ts'
import { openPurger, purge } from '../../src/keeping/purge.ts'
import { lastingTables, tables } from '../../src/store/tables.ts'
import { fillAll, newShelf, type Shelf } from '../help/backups.ts'
import { filledPhoto } from '../help/every-table.ts'
import { addPile } from '../help/rows.ts'
import { eachStore } from '../help/stores.ts'

const now = Date.UTC(2026, 5, 1)
const keeping = {
  open_days: 100,
  withdrawn_days: 10,
  unsent_days: 200,
  finished_days: 1000,
  removed_photo_days: 7,
  mail_file_days: 30,
}

let shelf: Shelf
beforeEach(async () => {
  shelf = await newShelf()
})
afterEach(() => shelf.remove())

eachStore('a purge', (store) => {
  const purged = (options = {}) =>
    purge({ store: store(), photos: shelf.photos, keeping, dataDir: shelf.folder }, now, options)

  const pile = (
    id: string,
    number: number,
    status: 'open' | 'withdrawn' | 'decided',
    age: number,
  ) => addPile(store().db, { id, number, status, changed_at: now - days(age) })

  /** Every table, and nothing that waits to be removed already. */
  const fill = async () => {
    await fillAll(store(), shelf)
    await store().db.deleteFrom('photo_removal').execute()
  }

  const left = async () =>
    (await store().db.selectFrom('pile').select('id').orderBy('id').execute()).map(({ id }) => id)

  test('erases piles by what became of them and when they were last touched', async () => {
    await pile('open-old', 1, 'open', 101)
    await pile('open-young', 2, 'open', 99)
    await pile('withdrawn-old', 3, 'withdrawn', 11)
    await pile('withdrawn-young', 4, 'withdrawn', 9)
    await pile('decided-old', 5, 'decided', 201)
    await pile('decided-young', 6, 'decided', 199)
    await pile('open-written-to', 7, 'open', 150)
    const message = { item: null, account_id: null, wants_answer: 0 as const, settled_at: null }
    await store()
      .db.insertInto('message')
      .values({
        ...message,
        id: 'm',
        pile_id: 'open-written-to',
        text: 'Still there?',
        idem: 'm',
        at: now - days(1),
        settled_by: null,
      })
      .execute()
    const young = ['decided-young', 'open-written-to', 'open-young', 'withdrawn-young']

    expect(await purged({ dry: true })).toEqual({ piles: 3, photos: 0, mailFiles: 0 })
    expect(await left()).toHaveLength(7)
    expect(await purged()).toMatchObject({ piles: 3 })
    expect(await left()).toEqual(young)
    expect(await purged()).toMatchObject({ piles: 0 })
    const ledger = readFileSync(join(shelf.folder, 'erasures.jsonl'), 'utf8')
    expect(ledger).toContain(sha256('open-old'))
    expect(ledger).not.toContain('open-old')
  })

  test('leaves what is in the house, however old', async () => {
    await pile('here', 1, 'decided', 5000)
    const moved = { kind: 'garment', code: 'A1-1', place: 'shelf', since: 1, last_seq: 1 }
    await store()
      .db.insertInto('custody')
      .values({ ...moved, pile_id: 'here', subject: '1', state: 'received', whereabouts: 'here' })
      .execute()
    expect(await purged()).toMatchObject({ piles: 0 })
    await store().db.updateTable('custody').set({ whereabouts: 'gone' }).execute()
    expect(await purged()).toMatchObject({ piles: 1 })
  })

  test('leaves nothing of an erased pile in any table, nor its photos', async () => {
    await fill()
    await store().db.deleteFrom('custody').execute()
    await store().db.updateTable('pile').set({ status: 'open', changed_at: 1 }).execute()
    expect(await purged()).toMatchObject({ piles: 1 })
    for (const name of lastingTables.filter((one) => tables[one].of === 'pile')) {
      expect(await store().db.selectFrom(name).selectAll().execute(), name).toEqual([])
    }
    expect(readdirSync(join(shelf.folder, 'photos'))).toEqual([])
    expect(await store().db.selectFrom('photo_removal').selectAll().execute()).toEqual([])
  })

  test('of one photo takes every size and what was read on it, at once', async () => {
    await fill()
    await store().transaction((db) => erasePhotos(db, ['photo-id', 'no-such'], 'staff', now))
    expect(await sweepPhotos(store(), shelf.photos)).toBe(1)
    expect(readdirSync(join(shelf.folder, 'photos'))).toEqual([])
    const row = await store().db.selectFrom('photo').selectAll().executeTakeFirstOrThrow()
    expect(row).toMatchObject({ hash: '', cloth: null, label: null, look: null, removed_at: now })
  })

  test('keeps the files of a picture that another pile holds too', async () => {
    await fill()
    await addPile(store().db, { id: 'other', number: 2, changed_at: now })
    const row = await store().db.selectFrom('photo').selectAll().executeTakeFirstOrThrow()
    await store()
      .db.insertInto('photo')
      .values({ ...row, id: 'same', pile_id: 'other' })
      .execute()
    await store().transaction((db) => erasePhotos(db, ['photo-id'], 'customer', now))
    expect(await sweepPhotos(store(), shelf.photos)).toBe(0)
    expect(await shelf.photos.open(filledPhoto, 'full')).toBeDefined()
  })

  /** A server that starts at that time, looks once, and ends. */
  const startAt = async (at: number) => {
    const told: unknown[] = []
    const log = {
      info: (what: unknown) => told.push(what),
      error: (what: unknown) => told.push(what),
    }
    const parts = { store: store(), photos: shelf.photos, keeping, dataDir: shelf.folder }
    await openPurger({ ...parts, clock: () => at, log }).close()
    return told
  }

  test('by itself comes with the first look of a day, where somebody looked of late by the same clock', async () => {
    await pile('old', 1, 'open', 101)
    // Nobody ever looked before.
    expect(await startAt(now)).toEqual([])
    // A second process, or the same one started again.
    expect(await startAt(now + 5_000)).toEqual([])
    expect(await left()).toEqual(['old'])
    expect(await startAt(now + days(1))).toMatchObject([{ piles: 1 }])
    expect(await left()).toEqual([])
    await pile('old', 1, 'open', 101)
    expect(await startAt(now + days(1) + 5_000)).toEqual([])
    expect(await startAt(now + days(32))).toMatchObject([{ piles: 1 }])
  })

  test('by itself erases nothing at once where the clock has jumped, and nothing more when it is right again', async () => {
    await startAt(now)
    await pile('young', 1, 'open', 2)
    expect(await startAt(now + days(400))).toEqual([])
    expect(await startAt(now + days(400) + 60_000)).toEqual([])
    expect(await startAt(now + days(1))).toEqual([])
    expect(await startAt(now + days(2))).toEqual([])
    expect(await left()).toEqual(['young'])
    // Of a clock that is as wrong a day later nobody can tell that it is.
    await startAt(now + days(400))
    expect(await startAt(now + days(401))).toMatchObject([{ piles: 1 }])
  })
})
