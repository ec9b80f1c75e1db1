import { expect, test } from 'vitest'
import { promisesOf } from '../../src/desk/promises.ts'
import { acceptedPile, atTheDoor, clock, once, releaseCut, step } from '../help/custody.ts'
import { eachStore } from '../help/stores.ts'

const per = { teardown: 30, stabilising: 20, cutting: 2, piecing: 4, quilting: 15, finishing: 20 }
const day = Date.UTC(2026, 7, 3)

eachStore('what the benches owe', (store) => {
  /** An accepted pile of two garments on the shelf, and its accepted offer of so many minutes. */
  async function promised(minutes: number) {
    const { pileId, who } = await acceptedPile(store())
    await store()
      .db.insertInto('offer')
      .values({
        pile_id: pileId,
        version: 1,
        sums: '{}',
        currency: 'USD',
        total_minor: 0,
        deposit_minor: 0,
        minutes,
        promised_at: day,
        expires_at: day,
        over_reason: '',
        idem: once(),
        sent_at: clock(),
        sent_by: who,
        accepted_at: clock(),
        accepted_name: 'Ana Ruiz',
        accepted_words: null,
        superseded_at: null,
        ended_at: null,
      })
      .execute()
    await atTheDoor(store(), pileId, who)
    const move = (
      subject: string,
      name: Parameters<typeof step>[2]['move'],
      via: string | null = null,
    ) => step(store(), pileId, { subject, move: name, via, who })
    for (const subject of ['1', '2']) {
      await move(subject, 'receive', 'P1')
      await move(subject, 'hold')
    }
    return { pileId, move }
  }
  const left = async () => (await promisesOf(store().db, per)).map(({ minutes }) => minutes)

  test('a garment on the shelf is owed whole; taken apart and backed, that much less', async () => {
    const { pileId, move } = await promised(400)
    expect(await left()).toEqual([400])
    await move('1', 'tear-down')
    expect(await left()).toEqual([370])
    await move('1', 'stabilise')
    expect(await left()).toEqual([350])
    await move('2', 'tear-down')
    expect(await left()).toEqual([320])
    // Cut without a backing: nothing is taken off for one.
    await releaseCut(store(), pileId, 2)
    await move('2', 'cut')
    expect(await left()).toEqual([320])
  })

  test('what was worked never makes a promise less than nothing', async () => {
    const { move } = await promised(40)
    await move('1', 'tear-down')
    await move('2', 'tear-down')
    expect(await left()).toEqual([0])
  })

  test('a pile that is left out owes nothing', async () => {
    const { pileId } = await promised(400)
    expect(await promisesOf(store().db, per, pileId)).toEqual([])
  })
})
