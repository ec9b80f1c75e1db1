import { expect, test } from 'vitest'
import { newId } from '../../src/base/ids.ts'
import { draftsOf, firstOfItsKind, takePhoto } from '../../src/intake/photos.ts'
import { queuePile } from '../help/desk.ts'
import { eachStore } from '../help/stores.ts'

const now = Date.UTC(2026, 5, 1, 9)

eachStore('a photo that is sent again because no answer was heard', (store) => {
  /** Adds a draft of a picture and gives what stands for it. */
  async function setUp() {
    const who = { number: 1, confirmedAt: now, needBy: null, grades: [], who: 'Ana' }
    const pile_id = await queuePile(store().db, who)
    const place = { pileId: pile_id, item: 1, question: 'photos' }
    const add = async (
      hash: string,
      more: { kept?: 0 | 1; removed_at?: number; item?: number } = {},
    ) => {
      const id = newId()
      const row = { id, pile_id, item: 1, question: 'photos', hash, width: 1, height: 1, bytes: 1 }
      await store()
        .db.insertInto('photo')
        .values({ ...row, kept: 0, at: now, ...more })
        .execute()
      return id
    }
    return { place, add }
  }
  const gone = async () => {
    const rows = await store()
      .db.selectFrom('photo')
      .select('id')
      .where('removed_at', 'is not', null)
      .execute()
    return rows.map(({ id }) => id)
  }

  test('is the draft that came first, and goes itself', async () => {
    const { place, add } = await setUp()
    const first = await add('same')
    const again = await add('same')
    expect(await firstOfItsKind(store().db, place, again, now)).toBe(first)
    expect(await gone()).toEqual([again])
  })

  test('is the draft that came first, also where the last try ended as soon as its photo was kept', async () => {
    const { place } = await setUp()
    const photo = { full: Buffer.from('a picture'), width: 1, height: 1, seen: [] }
    const lane = { look: () => Promise.resolve({ photo, look: null, focal35: null }) }
    const context = {
      db: store().db,
      photos: { keep: () => Promise.resolve('same') },
      lane,
      clock: () => now,
    } as unknown as Parameters<typeof takePhoto>[0]
    const take = () => takePhoto(context, place, photo.full, 'garment')
    const first = await take()
    expect(await take()).toBe(first)
    expect(await draftsOf(store().db, place)).toEqual([first])
  })

  test.each([
    ['another picture', 'another', {}],
    ['one that an answer holds', 'same', { kept: 1 }],
    ['one that was taken away', 'same', { removed_at: 1 }],
    ['one of another garment', 'same', { item: 2 }],
  ] as const)('is not %s', async (_, hash, more) => {
    const { place, add } = await setUp()
    await add(hash, more)
    const before = await gone()
    const sent = await add('same')
    expect(await firstOfItsKind(store().db, place, sent, now)).toBe(sent)
    expect(await gone()).toEqual(before)
  })
})
