import { expect, test } from 'vitest'
import {
  type Deciding,
  decideGarment,
  decidePile,
  decisionsOf,
  type GarmentVerdict,
  type PileVerdict,
} from '../../src/desk/decisions.ts'
import { notesOf, settleNote } from '../../src/desk/notes.ts'
import { addStaff, askPerson, queuePile } from '../help/desk.ts'
import { eachStore } from '../help/stores.ts'

const clock = () => 1_000

eachStore('decisions', (store) => {
  async function desk(grades: readonly string[] = ['eyes', 'sound', 'home']) {
    const pile = await queuePile(store().db, { number: 1, grades })
    const marta = await addStaff(store().db, 'Marta')
    const ivo = await addStaff(store().db, 'Ivo')
    const garment = (item: number, verdict: GarmentVerdict, over: Partial<Deciding> = {}) =>
      decideGarment(store(), clock, pile, item, {
        verdict,
        reason: 'looked at it',
        who: marta,
        seen: 0,
        ...over,
      })
    const whole = (verdict: PileVerdict, over: Partial<Deciding> = {}) =>
      decidePile(store(), clock, pile, {
        verdict,
        reason: 'looked at it',
        who: marta,
        seen: 9_999,
        ...over,
      })
    const status = async () =>
      (await store().db.selectFrom('pile').select('status').executeTakeFirstOrThrow()).status
    return { pile, marta, ivo, garment, whole, status }
  }

  test('a decision tells who made it, when and why', async () => {
    const { pile, marta, garment } = await desk()
    await garment(1, 'care', { reason: '  sew a backing in \r\n first ' })
    expect(await decisionsOf(store().db, pile)).toMatchObject([
      {
        item: 1,
        verdict: 'care',
        reason: 'sew a backing in \n first',
        who: { id: marta, name: 'Marta' },
        at: 1_000,
      },
    ])
  })

  test('a newer decision stands and the older one stays', async () => {
    const { pile, garment } = await desk()
    await garment(1, 'ask')
    await garment(1, 'take', { seen: 1_000 })
    const verdicts = (await decisionsOf(store().db, pile)).map(({ verdict }) => verdict)
    expect(verdicts).toEqual(['ask', 'take'])
  })

  test.each(['ask', 'decline'] as const)('to %s wants a reason', async (verdict) => {
    const { pile, garment } = await desk()
    for (const reason of ['', '  ', 'no', '\u200b\u200b\u200b\u200b']) {
      await expect(garment(1, verdict, { reason })).rejects.toMatchObject({
        code: 'reason_missing',
      })
    }
    expect(await decisionsOf(store().db, pile)).toEqual([])
  })

  test.each(['hold', 'decline'] as const)('to %s a pile wants a reason', async (verdict) => {
    const { whole, status } = await desk()
    await expect(whole(verdict, { reason: 'no' })).rejects.toMatchObject({ code: 'reason_missing' })
    expect(await status()).toBe('confirmed')
  })

  test('two thousand characters are a reason, one more is too long', async () => {
    const { garment } = await desk()
    await garment(1, 'care', { reason: '🧵'.repeat(2_000) })
    await expect(garment(2, 'care', { reason: '🧵'.repeat(2_001) })).rejects.toMatchObject({
      code: 'answer_too_long',
      details: { longest: 2_000 },
    })
  })

  test('the second of two at one garment is told, and nothing is overwritten', async () => {
    const { pile, ivo, garment } = await desk()
    await garment(1, 'take')
    await expect(garment(1, 'decline', { who: ivo })).rejects.toMatchObject({
      code: 'decided_meanwhile',
    })
    expect(await decisionsOf(store().db, pile)).toHaveLength(1)
    await garment(1, 'decline', { who: ivo, seen: 1_000 })
    expect((await decisionsOf(store().db, pile)).at(-1)).toMatchObject({ who: { name: 'Ivo' } })
  })

  test('of two who press at the same moment one is told', async () => {
    const { pile, ivo, garment } = await desk()
    const pressed = await Promise.allSettled([
      garment(1, 'take'),
      garment(1, 'decline', { who: ivo }),
    ])
    expect(pressed.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected'])
    expect(await decisionsOf(store().db, pile)).toHaveLength(1)
  })

  test('two who look at two garments do not stand in each other’s way', async () => {
    const { pile, ivo, garment } = await desk()
    await Promise.all([garment(1, 'take'), garment(3, 'decline', { who: ivo })])
    expect(await decisionsOf(store().db, pile)).toHaveLength(2)
  })

  test('a double press is one decision', async () => {
    const { pile, garment } = await desk()
    await garment(1, 'take')
    await garment(1, 'take')
    expect(await decisionsOf(store().db, pile)).toHaveLength(1)
  })

  test('decisions keep the order they were made in, though the clock stands still', async () => {
    const { pile, garment } = await desk()
    await garment(1, 'take')
    await garment(2, 'take')
    await garment(3, 'take')
    const made = await decisionsOf(store().db, pile)
    expect(made.map(({ item, at }) => [item, at])).toEqual([
      [1, 1_000],
      [2, 1_001],
      [3, 1_002],
    ])
  })

  test('a pile is accepted after its doubtful garments', async () => {
    const { garment, whole, status } = await desk()
    await expect(whole('accept')).rejects.toMatchObject({
      code: 'garments_undecided',
      details: { count: 2 },
    })
    await garment(1, 'take')
    await garment(3, 'ask', { reason: 'is it damp?' })
    await expect(whole('accept')).rejects.toMatchObject({ details: { count: 1 } })
    await garment(3, 'decline', { seen: 9_999 })
    await whole('accept')
    expect(await status()).toBe('decided')
  })

  test('whoever decides of the pile knows every decision of its garments', async () => {
    const { garment, whole, status } = await desk(['sound'])
    await garment(1, 'care')
    await expect(whole('accept', { seen: 0 })).rejects.toMatchObject({ code: 'decided_meanwhile' })
    expect(await status()).toBe('confirmed')
  })

  test('a decided pile keeps its garments’ decisions until it is put on hold', async () => {
    const { garment, whole, status } = await desk(['sound'])
    await whole('decline')
    await expect(garment(1, 'take')).rejects.toMatchObject({ code: 'pile_decided' })
    await whole('hold')
    expect(await status()).toBe('confirmed')
    await garment(1, 'take', { seen: 9_999 })
  })

  test.each([
    [4, 'a garment that is not there'],
    [0, 'none'],
    [-1, 'less than none'],
  ])('garment %i is %s', async (item) => {
    const { garment } = await desk()
    await expect(garment(item, 'take')).rejects.toMatchObject({ code: 'not_found' })
  })

  test('a garment that the customer left out is not decided of', async () => {
    const { pile, garment } = await desk()
    await store()
      .db.updateTable('garment')
      .set({ dropped: 1 })
      .where('pile_id', '=', pile)
      .where('item', '=', 1)
      .execute()
    await expect(garment(1, 'take')).rejects.toMatchObject({ code: 'not_found' })
  })

  test.each(['open', 'withdrawn'] as const)(
    'a pile that is %s is not decided of',
    async (status) => {
      const { pile, garment, whole } = await desk()
      await store().db.updateTable('pile').set({ status }).where('id', '=', pile).execute()
      await expect(garment(1, 'take')).rejects.toMatchObject({ code: 'not_found' })
      await expect(whole('accept')).rejects.toMatchObject({ code: 'not_found' })
    },
  )

  test('who saw to a note first stays told', async () => {
    const { pile, marta, ivo } = await desk()
    const note = await askPerson(store().db, pile)
    await settleNote(store(), clock, pile, note, marta)
    await settleNote(store(), () => 2_000, pile, note, ivo)
    expect(await notesOf(store().db, pile)).toMatchObject([{ settled: { by: 'Marta', at: 1_000 } }])
  })

  test('a note of another pile is not there', async () => {
    const { pile, marta } = await desk()
    const other = await queuePile(store().db, { number: 2 })
    const note = await askPerson(store().db, other)
    await expect(settleNote(store(), clock, pile, note, marta)).rejects.toMatchObject({
      code: 'not_found',
    })
    expect(await notesOf(store().db, other)).toMatchObject([{ settled: null }])
  })
})
