import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  decideGarment,
  decidePile,
  garmentVerdicts,
  pileVerdicts,
} from '../../src/desk/decisions.ts'
import { settleNote } from '../../src/desk/notes.ts'
import { fillWaiting, refreshWaiting, type ToWait, waitingOf } from '../../src/intake/waiting.ts'
import { addStaff, askPerson, queuePile } from '../help/desk.ts'
import { eachStore, oneStore } from '../help/stores.ts'

const pile: ToWait = {
  status: 'confirmed',
  confirmedAt: 10,
  decisions: [],
  garments: [
    { item: 1, grade: 'sound' },
    { item: 2, grade: 'eyes' },
  ],
  questions: [],
  asked: [],
  offered: null,
  laid: null,
}
const told = (item: number | null, verdict: string, at: number) => ({ item, verdict, at })

describe('on whom a pile waits', () => {
  test.each<[what: string, given: Partial<ToWait>, on: string, since: number]>([
    ['a new pile', {}, 'us', 10],
    [
      'one whose doubtful garment is asked about',
      { decisions: [told(2, 'ask', 12)] },
      'customer',
      12,
    ],
    [
      'one asked about, with another doubt left',
      {
        decisions: [told(2, 'ask', 12)],
        garments: [...pile.garments, { item: 3, grade: 'home' }],
      },
      'us',
      10,
    ],
    [
      'one decided of after the answer',
      { decisions: [told(2, 'ask', 12), told(2, 'take', 14)] },
      'us',
      10,
    ],
    ['one on hold', { decisions: [told(null, 'hold', 13)] }, 'held', 13],
    [
      'one on hold with a question',
      { decisions: [told(null, 'hold', 13)], questions: [20] },
      'us',
      20,
    ],
    ['an accepted one', { status: 'decided', decisions: [told(null, 'accept', 15)] }, 'nobody', 15],
    ['an accepted one with questions', { status: 'decided', questions: [30, 20] }, 'us', 20],
    ['one whose customer was written to', { asked: [22] }, 'us', 10],
    [
      'one whose customer was written to, with no doubt left',
      { asked: [22], garments: [{ item: 1, grade: 'sound' }] },
      'customer',
      22,
    ],
    [
      'an accepted one whose customer was written to',
      { status: 'decided', asked: [40, 30] },
      'customer',
      30,
    ],
    [
      'a withdrawn one whose customer was written to',
      { status: 'withdrawn', asked: [40] },
      'nobody',
      10,
    ],
    [
      'an accepted one whose customer is to look at the laid-out quilt',
      { status: 'decided', laid: { state: 'asked', since: 50 } },
      'customer',
      50,
    ],
    [
      'one whose customer wishes for a change of the laid-out quilt',
      { status: 'decided', asked: [40], laid: { state: 'change', since: 51 } },
      'us',
      51,
    ],
    [
      'one whose customer was asked, and whose quilt is another since',
      { status: 'decided', laid: { state: 'anew', since: 52 } },
      'us',
      52,
    ],
    [
      'one whose customer said yes to the laid-out quilt',
      {
        status: 'decided',
        decisions: [told(null, 'accept', 15)],
        laid: { state: 'yes', since: 53 },
      },
      'nobody',
      15,
    ],
    [
      'one on hold whose quilt was laid out before',
      { decisions: [told(null, 'hold', 13)], laid: { state: 'change', since: 51 } },
      'held',
      13,
    ],
    ['a withdrawn one', { status: 'withdrawn' }, 'nobody', 10],
  ])('%s', (_, given, on, since) => {
    expect(waitingOf({ ...pile, ...given })).toMatchObject({ on, since })
  })
})

type Step =
  | {
      readonly step: 'garment'
      readonly item: number
      readonly verdict: (typeof garmentVerdicts)[number]
    }
  | { readonly step: 'pile'; readonly verdict: (typeof pileVerdicts)[number] }
  | { readonly step: 'ask' }
  | { readonly step: 'settle' }

const steps: fc.Arbitrary<Step[]> = fc.array(
  fc.oneof(
    fc.record({
      step: fc.constant('garment' as const),
      item: fc.integer({ min: 1, max: 3 }),
      verdict: fc.constantFrom(...garmentVerdicts),
    }),
    fc.record({ step: fc.constant('pile' as const), verdict: fc.constantFrom(...pileVerdicts) }),
    fc.record({ step: fc.constant('ask' as const) }),
    fc.record({ step: fc.constant('settle' as const) }),
  ),
  { maxLength: 12 },
)

oneStore('the row that the queue is sorted by', (store) => {
  test('is after any course of decisions and questions what counting anew gives', async () => {
    const { db } = store()
    const who = await addStaff(db)
    let number = 0
    await fc.assert(
      fc.asyncProperty(steps, async (course) => {
        number += 1
        const id = await queuePile(db, { number, grades: ['eyes', 'sound', 'home'] })
        let now = 1000
        const clock = () => ++now
        const deciding = { reason: 'because of that', who, seen: Number.MAX_SAFE_INTEGER }
        const notes: string[] = []
        for (const one of course) {
          // What is refused changes nothing: the rows have to agree all the same.
          const refused = () => {}
          if (one.step === 'ask') notes.push(await askPerson(db, id))
          else if (one.step === 'settle') {
            const note = notes.pop()
            if (note) await settleNote(store(), clock, id, note, who)
          } else if (one.step === 'pile') {
            await decidePile(store(), clock, id, { ...deciding, verdict: one.verdict }).catch(
              refused,
            )
          } else {
            const { item, verdict } = one
            await decideGarment(store(), clock, id, item, { ...deciding, verdict }).catch(refused)
          }
        }
        const row = () =>
          db.selectFrom('waiting').selectAll().where('pile_id', '=', id).executeTakeFirstOrThrow()
        const kept = await row()
        await refreshWaiting(db, id)
        expect(await row()).toEqual(kept)
      }),
      { numRuns: 60 },
    )
  })
})

eachStore('piles from before', (store) => {
  test('are filled in at the start, once', async () => {
    const { db } = store()
    for (let number = 1; number <= 3; number++) await queuePile(db, { number })
    await queuePile(db, { number: 4, status: 'open' })
    const before = await db.selectFrom('waiting').selectAll().orderBy('pile_id').execute()
    expect(before).toHaveLength(3)
    await db.deleteFrom('waiting').where('pile_id', '!=', 'pile-2').execute()
    expect(await fillWaiting(db)).toBe(2)
    expect(await fillWaiting(db)).toBe(0)
    expect(await db.selectFrom('waiting').selectAll().orderBy('pile_id').execute()).toEqual(before)
  })
})
