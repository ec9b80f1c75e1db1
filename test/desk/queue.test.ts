import { expect, test } from 'vitest'
import { days } from '../../src/base/clock.ts'
import { decideGarment, decidePile } from '../../src/desk/decisions.ts'
import { settleNote } from '../../src/desk/notes.ts'
import { dueFigures, queue, queueLists, queueOrders, type Wanted } from '../../src/desk/queue.ts'
import { addStaff, askPerson, queuePile } from '../help/desk.ts'
import { eachStore } from '../help/stores.ts'

const clock = () => 1_000
const at = clock()

eachStore('the queue', (store) => {
  const look = (wanted: Partial<Wanted> = {}) =>
    queue(store().db, { list: 'us', page: 1, at, ...wanted })
  const numbers = async (wanted: Partial<Wanted> = {}) =>
    (await look(wanted)).piles.map(({ number }) => number)
  const decided = (item: number, verdict: 'take' | 'ask', pile: string, who: string, seen = 0) =>
    decideGarment(store(), clock, pile, item, { verdict, reason: 'thin at the elbow', who, seen })

  test('an empty desk has empty lists', async () => {
    for (const list of queueLists) {
      expect(await look({ list })).toEqual({
        piles: [],
        page: 1,
        pages: 1,
        found: 0,
        counts: { us: 0, customer: 0, held: 0, nobody: 0, open: 0 },
      })
    }
  })

  test('who waits longest comes first, and before them who needs it before it could be made', async () => {
    const now = days(1000)
    const { look: within, make } = dueFigures
    await queuePile(store().db, { number: 1, confirmedAt: now - 3 })
    await queuePile(store().db, { number: 2, confirmedAt: now - 2 })
    // Needed so late that it is not due earlier than others.
    const far = now + within + make + days(1)
    await queuePile(store().db, { number: 3, confirmedAt: now - 1, needBy: far })
    await queuePile(store().db, { number: 4, confirmedAt: now, needBy: now + make - 1 })
    await queuePile(store().db, { number: 5, confirmedAt: now, needBy: now })
    expect(await numbers({ at: now })).toEqual([5, 4, 1, 2, 3])
    expect(await numbers({ at: now, order: 'since' })).toEqual([1, 2, 3, 4, 5])
    expect(await numbers({ at: now, order: 'needed' })).toEqual([5, 4, 3, 1, 2])
    expect(await numbers({ at: now, order: 'newest' })).toEqual([5, 4, 3, 2, 1])
    expect(await numbers({ at: now, only: 'soon' })).toEqual([5, 4, 3])
  })

  test('a garment that was decided and a note that was seen to need no eyes any more', async () => {
    const pile = await queuePile(store().db, { number: 1, grades: ['eyes', 'home', 'sound'] })
    const note = await askPerson(store().db, pile, 1)
    const who = await addStaff(store().db)
    expect((await look()).piles[0]).toMatchObject({ needsEyes: 2, openNotes: 1 })
    expect(await numbers({ only: 'eyes' })).toEqual([1])
    expect(await numbers({ only: 'questions' })).toEqual([1])

    await decided(1, 'take', pile, who)
    await settleNote(store(), clock, pile, note, who)
    expect((await look()).piles[0]).toMatchObject({ needsEyes: 1, openNotes: 0 })
    expect(await numbers({ only: 'questions' })).toEqual([])
  })

  test('a pile whose last doubt was asked about waits on its customer, until all is decided', async () => {
    const who = await addStaff(store().db)
    const pile = await queuePile(store().db, { number: 1, grades: ['eyes', 'eyes'] })
    await decided(1, 'ask', pile, who)
    expect(await numbers()).toEqual([1])
    await decided(2, 'take', pile, who)
    expect(await numbers()).toEqual([])
    expect((await look({ list: 'customer' })).piles[0]).toMatchObject({ number: 1, since: clock() })
    await decided(1, 'take', pile, who, clock())
    expect(await numbers()).toEqual([1])
  })

  test('a decided pile leaves those that wait, the newest decided pile leading its own list', async () => {
    const who = await addStaff(store().db)
    for (const number of [1, 2, 3]) {
      const pile = await queuePile(store().db, { number })
      if (number < 3) {
        const moment = () => 1_000 + number
        await decidePile(store(), moment, pile, { verdict: 'accept', reason: '', who, seen: 0 })
      }
    }
    expect(await numbers()).toEqual([3])
    expect(await numbers({ list: 'nobody' })).toEqual([2, 1])
  })

  test('a question that comes after the decision brings its pile back', async () => {
    const who = await addStaff(store().db)
    const pile = await queuePile(store().db, { number: 1 })
    await decidePile(store(), clock, pile, { verdict: 'accept', reason: '', who, seen: 0 })
    expect(await numbers()).toEqual([])
    await askPerson(store().db, pile)
    expect(await numbers()).toEqual([1])
  })

  test('what a pile is on hold for stays told, in a list of its own', async () => {
    const who = await addStaff(store().db)
    const pile = await queuePile(store().db, { number: 1, needBy: 77 })
    await decidePile(store(), clock, pile, { verdict: 'hold', reason: 'no box yet', who, seen: 0 })
    expect(await numbers()).toEqual([])
    const found = await look({ list: 'held' })
    expect(found.piles[0]).toMatchObject({ verdict: 'hold', needBy: 77, size: 'throw' })
  })

  test('an open intake is counted and not shown', async () => {
    await queuePile(store().db, { number: 1, status: 'open' })
    const found = await look()
    expect(found.piles).toEqual([])
    expect(found.counts).toMatchObject({ us: 0, open: 1 })
  })

  test('every pile stands on one page and no pile on two, in every order', async () => {
    for (let number = 1; number <= 7; number++) {
      await queuePile(store().db, { number, confirmedAt: 9, needBy: number % 2 ? 50 : null })
    }
    for (const order of queueOrders) {
      const pages = await Promise.all([1, 2, 3].map((page) => numbers({ page, length: 3, order })))
      expect(pages.map(({ length }) => length)).toEqual([3, 3, 1])
      expect(pages.flat().sort()).toEqual([1, 2, 3, 4, 5, 6, 7])
    }
  })

  test.each([
    [0, 1],
    [-3, 1],
    [99, 3],
  ])('page %i is page %i', async (asked, shown) => {
    for (let number = 1; number <= 7; number++) await queuePile(store().db, { number })
    expect(await look({ page: asked, length: 3 })).toMatchObject({ page: shown, pages: 3 })
  })

  test.each([
    ['2', [2]],
    ['Pile 2', [2]],
    ['ana', [1]],
    ['JOSÉ', []],
    ['José', [2]],
    ['flannel', [1, 3]],
    ['a2-1', [1, 2, 3]],
    ['100%', [3]],
    ['_', []],
    ["' or 1=1 --", []],
    ['\\', []],
    ['   ', [1, 2, 3]],
  ])('looking for %j', async (text, found) => {
    const { db } = store()
    await queuePile(db, { number: 1, who: 'Ana Ruiz', names: ['Blue Flannel'] })
    await queuePile(db, { number: 2, who: 'José Łukasz', names: ['Work shirt'] })
    await queuePile(db, { number: 3, who: 'Wren', names: ['100% flannel'] })
    // Letters beyond ASCII are told apart by their case: SQLite folds only those of ASCII.
    if (text === 'JOSÉ') return
    expect((await numbers({ text })).sort()).toEqual(found)
    expect((await look({ text })).found).toBe(found.length)
  })
})
