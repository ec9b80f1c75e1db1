import { text } from 'node:stream/consumers'
import { parse } from 'csv-parse/sync'
import fc from 'fast-check'
import { afterEach, expect, test } from 'vitest'
import { addAccount } from '../../src/desk/accounts.ts'
import { csvStream, restored } from '../../src/desk/csv.ts'
import { decideGarment, decidePile } from '../../src/desk/decisions.ts'
import { type ExportName, exported, exportNames } from '../../src/desk/export.ts'
import { median, numbersOf } from '../../src/desk/numbers.ts'
import { eachStore } from '../help/stores.ts'
import { confirmPile, leadTo, openWorkshop, said, type Workshop } from '../help/workshop.ts'

const start = Date.UTC(2026, 5, 1, 9)
const day = 24 * 60 * 60 * 1000
const period = { from: start - day, to: start + 30 * day }

test('a median is the middle one, or the mean of the two in the middle', () => {
  expect(median([])).toBeNull()
  expect(median([5])).toBe(5)
  expect(median([9, 1, 5])).toBe(5)
  expect(median([4, 1, 9, 5])).toBe(4.5)
  fc.assert(
    fc.property(fc.array(fc.integer(), { minLength: 1 }), (values) => {
      const middle = median(values)!
      // By its definition: no more than half lie on either side.
      expect(values.filter((one) => one < middle).length * 2).toBeLessThanOrEqual(values.length)
      expect(values.filter((one) => one > middle).length * 2).toBeLessThanOrEqual(values.length)
    }),
  )
})

eachStore('what the owner counts and takes along', (store) => {
  let workshop: Workshop
  let now = start
  afterEach(() => workshop?.close())

  const shirt = { kind: said('button-shirt'), size: said('XL') }
  const label = (words: string, read: string) => ({
    ...shirt,
    label: { given: { found: 'words' as const, words, iron: null, photo: 'photo-1', read } },
  })

  const open = async () => {
    now = start
    workshop = await openWorkshop(store(), () => now)
    const { id } = await addAccount(store(), () => now, {
      email: 'ida@lantern-street.example',
      name: '=Ida, "O’Neil"',
      role: 'owner',
      password: 'needle and thimble',
    })
    return id
  }

  const read = async (name: ExportName) => {
    const { columns, rows } = exported(name, store().db, workshop.knowledge)
    const csv = await text(csvStream(columns, rows))
    const found = parse(csv, { columns: true }) as Record<string, string>[]
    return { csv, columns, rows: found }
  }

  test('an empty store counts nothing and exports headers alone', async () => {
    await open()
    expect(await numbersOf(store().db, period, now)).toMatchObject({
      piles: 0,
      flags: [],
      left: [],
      labels: { read: 0, otherwise: 0 },
      prints: { read: 0, otherwise: 0 },
      toConfirm: null,
      toDecide: null,
    })
    for (const name of exportNames) {
      const { csv, columns, rows } = await read(name)
      expect([name, csv]).toEqual([name, `${columns.join()}\r\n`])
      expect(rows).toEqual([])
    }
  })

  test('piles, reasons, readings, places and times are those of the period', async () => {
    const who = await open()
    const { conversation } = workshop
    const first = await confirmPile(conversation, [
      label('100 % cotton. Warm iron.', '100 % cotton. Warm iron.'),
      label('100 % linen. Warm iron.', '100 % cotton. Warm iron.'),
      { ...shirt, wear: said('shattered') },
    ])
    await leadTo('review', conversation, [shirt])
    const key = await conversation.start('en')
    const { row } = await conversation.open(first)
    await store()
      .db.updateTable('pile')
      .set({ started_at: now - 2 * 60_000 })
      .where('id', '=', row.id)
      .execute()
    now += 3 * day
    await decideGarment(store(), () => now, row.id, 3, {
      verdict: 'decline',
      reason: 'too far gone',
      who,
      seen: 0,
    })
    now += day
    await decidePile(store(), () => now, row.id, { verdict: 'accept', reason: '', who, seen: now })
    now += 5 * day

    const numbers = await numbersOf(store().db, period, now)
    expect(numbers.states).toEqual([
      { status: 'open', count: 2 },
      { status: 'confirmed', count: 0 },
      { status: 'decided', count: 1 },
      { status: 'withdrawn', count: 0 },
    ])
    expect(numbers.labels).toEqual({ read: 2, otherwise: 1 })
    expect(numbers.flags.find(({ code }) => code === 'shattered')).toMatchObject({
      severity: 'home',
      count: 1,
      taken: 0,
      declined: 1,
    })
    expect(numbers.toConfirm).toBe(2 * 60_000)
    expect(numbers.toDecide).toBe(4 * day)
    // Both open ones were left nine days ago: one at its first question, one before confirming.
    const { pile } = await conversation.open(key)
    const at = pile.followed.place.at === 'question' ? pile.followed.place.question.id : ''
    expect(at).not.toBe('')
    expect(numbers.left.map(({ count }) => count)).toEqual([1, 1])
    expect(numbers.left.map(({ place }) => place)).toEqual(expect.arrayContaining([at, 'end']))

    const before = await numbersOf(store().db, { from: 0, to: start - day }, now)
    expect(before.piles).toBe(0)
  })

  test('what the photo surely told of a print is held against the answer', async () => {
    await open()
    const key = await confirmPile(workshop.conversation, [shirt, shirt])
    const { row } = await workshop.conversation.open(key)
    const look = (print: string) =>
      JSON.stringify({
        fitness: { ok: true, problems: [] },
        print: { class: print, confidence: 0.95 },
        colours: [],
        graphic: null,
      })
    // Both shirts were answered with the first option of the pattern's question.
    const pattern = 'solid'
    for (const [item, print] of [
      [1, pattern],
      [2, 'single'],
    ] as const) {
      await store()
        .db.insertInto('photo')
        .values({
          id: `photo-${item}`,
          pile_id: row.id,
          item,
          question: 'photos',
          hash: `hash-${item}`,
          width: 1,
          height: 1,
          bytes: 1,
          cloth: null,
          label: null,
          look: look(print),
          shows: 'front',
          kept: 1,
          at: now,
          removed_at: null,
        })
        .execute()
    }
    const { prints } = await numbersOf(store().db, period, now)
    expect(prints).toEqual({ read: 2, otherwise: 1 })
  })

  test('every row comes back through a reader: hostile names, times, money', async () => {
    const who = await open()
    const names = ['=HYPERLINK("x")', '李, "quoted"', 'line\nline', "'plain", '+1', 'Dad’s']
    const key = await confirmPile(
      workshop.conversation,
      names.map((name) => ({ ...shirt, name: said(name) })),
      { layout_wish: said('plain-squares') },
    )
    const { row, pile } = await workshop.conversation.open(key)
    const reason = '@SUM(A1), "no"\r\nand more'
    await decidePile(store(), () => now, row.id, { verdict: 'hold', reason, who, seen: 0 })

    const garments = await read('garments')
    const kept = pile.garments.map(({ name }) => name)
    expect(garments.rows.map(({ name }) => restored(name!))).toEqual(kept)
    expect(garments.csv).toContain('\'=HYPERLINK(""x"")')
    expect(garments.rows[0]).toMatchObject({ pile: '1', garment: '1', left_out: 'no' })

    const decisions = await read('decisions')
    expect(decisions.rows).toHaveLength(1)
    expect(decisions.rows[0]).toMatchObject({
      verdict: 'hold',
      garment: '',
      at: new Date(now).toISOString(),
    })
    expect(restored(decisions.rows[0]!.by!)).toBe('=Ida, "O’Neil"')
    expect(restored(decisions.rows[0]!.reason!)).toBe(reason.replace('\r\n', '\n'))

    const piles = await read('piles')
    const { likely } = pile.estimate!.total
    expect(piles.rows[0]).toMatchObject({
      pile: '1',
      state: 'confirmed',
      began_at: new Date(start).toISOString(),
      customer: 'Ana Ruiz',
      estimate_likely: (likely / 100).toFixed(2),
      currency: 'USD',
    })
  })

  test('more piles than are held at once all come, in order', async () => {
    await open()
    const { db } = store()
    const key = await workshop.conversation.start('en')
    const { row } = await workshop.conversation.open(key)
    for (let number = 2; number <= 120; number += 1) {
      await db
        .insertInto('pile')
        .values({ ...row, id: `pile-${number}`, number })
        .execute()
    }
    const { rows } = await read('piles')
    expect(rows.map(({ pile }) => Number(pile))).toEqual(
      Array.from({ length: 120 }, (_, n) => n + 1),
    )
    expect(rows[0]).toMatchObject({ estimate_likely: '', currency: '' })
  })
})
