import { expect, test } from 'vitest'
import { decideGarment, decidePile } from '../../src/desk/decisions.ts'
import { settleNote } from '../../src/desk/notes.ts'
import { type QueueState, queue } from '../../src/desk/queue.ts'
import { addStaff, askPerson, queuePile } from '../help/desk.ts'
import { eachStore } from '../help/stores.ts'

const clock = () => 1_000

eachStore('the queue', (store) => {
  const numbers = async (state: QueueState = 'waiting', page = 1, length = 50) =>
    (await queue(store().db, { state, page, length })).piles.map(({ number }) => number)

  test('an empty desk has an empty queue', async () => {
    expect(await queue(store().db, { state: 'waiting', page: 1 })).toEqual({
      piles: [],
      page: 1,
      pages: 1,
      counts: { waiting: 0, decided: 0, open: 0 },
    })
  })

  test('piles with something for the eyes come first, then the longest waiting', async () => {
    await queuePile(store().db, { number: 1, confirmedAt: 40 })
    await queuePile(store().db, { number: 2, confirmedAt: 30, grades: ['sound', 'eyes'] })
    await queuePile(store().db, { number: 3, confirmedAt: 20 })
    const asked = await queuePile(store().db, { number: 4, confirmedAt: 10 })
    await queuePile(store().db, { number: 5, confirmedAt: 5, grades: ['care'] })
    await queuePile(store().db, { number: 6, confirmedAt: 50, grades: ['home'] })
    await askPerson(store().db, asked)
    expect(await numbers()).toEqual([4, 2, 6, 5, 3, 1])
  })

  test('a garment that was decided and a note that was seen to need no eyes any more', async () => {
    const pile = await queuePile(store().db, { number: 1, grades: ['eyes', 'home', 'sound'] })
    const note = await askPerson(store().db, pile, 1)
    const who = await addStaff(store().db)
    const before = await queue(store().db, { state: 'waiting', page: 1 })
    expect(before.piles[0]).toMatchObject({ needsEyes: 2, openNotes: 1 })

    await decideGarment(store(), clock, pile, 1, { verdict: 'take', reason: '', who, seen: 0 })
    await settleNote(store(), clock, pile, note, who)
    const after = await queue(store().db, { state: 'waiting', page: 1 })
    expect(after.piles[0]).toMatchObject({ needsEyes: 1, openNotes: 0 })
  })

  test('a decided pile leaves those that wait, the newest decided pile leading its own list', async () => {
    const who = await addStaff(store().db)
    for (const number of [1, 2, 3]) {
      const pile = await queuePile(store().db, { number })
      if (number < 3) {
        await decidePile(store(), clock, pile, { verdict: 'accept', reason: '', who, seen: 0 })
      }
    }
    expect(await numbers('waiting')).toEqual([3])
    expect(await numbers('decided')).toEqual([2, 1])
  })

  test('an open intake is counted and not shown', async () => {
    await queuePile(store().db, { number: 1, status: 'open' })
    const found = await queue(store().db, { state: 'waiting', page: 1 })
    expect(found.piles).toEqual([])
    expect(found.counts).toEqual({ waiting: 0, decided: 0, open: 1 })
  })

  test('every pile stands on one page and no pile on two', async () => {
    for (let number = 1; number <= 7; number++) {
      await queuePile(store().db, { number, confirmedAt: 9 })
    }
    const pages = [await numbers('waiting', 1, 3), await numbers('waiting', 2, 3)]
    pages.push(await numbers('waiting', 3, 3))
    expect(pages).toEqual([[1, 2, 3], [4, 5, 6], [7]])
  })

  test.each([
    [0, 1],
    [-3, 1],
    [99, 3],
  ])('page %i is page %i', async (asked, shown) => {
    for (let number = 1; number <= 7; number++) await queuePile(store().db, { number })
    const found = await queue(store().db, { state: 'waiting', page: asked, length: 3 })
    expect(found).toMatchObject({ page: shown, pages: 3 })
  })

  test('what a pile is on hold for stays told', async () => {
    const who = await addStaff(store().db)
    const pile = await queuePile(store().db, { number: 1, needBy: 77 })
    await decidePile(store(), clock, pile, { verdict: 'hold', reason: 'no box yet', who, seen: 0 })
    const found = await queue(store().db, { state: 'waiting', page: 1 })
    expect(found.piles[0]).toMatchObject({ verdict: 'hold', needBy: 77, size: 'throw' })
  })
})
