import { expect, test } from 'vitest'
import { decidePile, decisionsOf, type GarmentVerdict } from '../../src/desk/decisions.ts'
import { decideFlag, flagDecisionsOf, standingFlag } from '../../src/desk/flag-decisions.ts'
import { addStaff, queuePile } from '../help/desk.ts'
import { eachStore } from '../help/stores.ts'

const grave = ['wear-holes', 'soil-unknown'] as const
const flags = [
  { code: 'wear-holes', severity: 'eyes', for: ['staff'], because: ['wear'] },
  { code: 'soil-unknown', severity: 'home', for: ['staff'], because: ['soil'] },
  { code: 'wash-first', severity: 'care', for: ['customer'], because: ['wash'] },
]

eachStore('deciding of single reasons', (store) => {
  let now = 1000
  const clock = () => ++now

  async function prepare() {
    const { db } = store()
    const pile = await queuePile(db, { number: 1, grades: ['home'] })
    await db
      .updateTable('garment')
      .set({ flags: JSON.stringify(flags) })
      .execute()
    const who = await addStaff(db)
    const decide = (
      flag: string,
      verdict: GarmentVerdict,
      { reason = 'looked at it', seen = 0, by = who } = {},
    ) => decideFlag(store(), clock, pile, { item: 1, flag, verdict, reason, who: by, seen })
    const garment = async () =>
      (await decisionsOf(db, pile)).map(({ item, verdict, reason }) => ({ item, verdict, reason }))
    return { db, pile, who, decide, garment }
  }

  test('once the last grave reason is decided, the garment is by the gravest, with their words', async () => {
    const { db, pile, decide, garment } = await prepare()
    await decide(grave[0], 'care', { reason: 'patch it from behind' })
    expect(await garment()).toEqual([])
    await decide(grave[1], 'take', { reason: 'washed twice' })
    expect(await garment()).toEqual([
      { item: 1, verdict: 'care', reason: 'patch it from behind\nwashed twice' },
    ])
    const [waits] = await db.selectFrom('waiting').select('eyes').execute()
    expect(waits!.eyes).toBe(0)
    expect(standingFlag(await flagDecisionsOf(db, pile), 1, grave[0])).toMatchObject({
      verdict: 'care',
      by: 'Marta',
    })
  })

  test('one that rules the garment out declines it, and is outdone by a later one', async () => {
    const { decide, garment } = await prepare()
    await decide(grave[0], 'take')
    await decide(grave[1], 'decline', { reason: 'mould' })
    expect((await garment()).at(-1)).toMatchObject({ verdict: 'decline' })
    await decide(grave[1], 'take', { reason: 'no mould after all', seen: now })
    expect((await garment()).at(-1)).toMatchObject({ verdict: 'take' })
  })

  test('the same sent twice is one; another by somebody else meanwhile is told', async () => {
    const { db, pile, decide } = await prepare()
    const other = await addStaff(db, 'Ivo')
    await decide(grave[0], 'take')
    await decide(grave[0], 'take')
    expect(await flagDecisionsOf(db, pile)).toHaveLength(1)
    await expect(decide(grave[0], 'care', { by: other })).rejects.toMatchObject({
      code: 'decided_meanwhile',
    })
    expect(await flagDecisionsOf(db, pile)).toHaveLength(1)
  })

  test.each([
    ['wash-first', 'take', 'fine', 'not_found'],
    ['constructor', 'take', 'fine', 'not_found'],
    ['wear-holes', 'decline', ' ', 'reason_missing'],
    ['wear-holes', 'take', 'x'.repeat(2001), 'answer_too_long'],
  ] as const)('%s, %s: %#', async (flag, verdict, reason, code) => {
    const { db, pile, decide } = await prepare()
    await expect(decide(flag, verdict, { reason })).rejects.toMatchObject({ code })
    expect(await flagDecisionsOf(db, pile)).toEqual([])
  })

  test('a decided pile is decided', async () => {
    const { pile, who, decide } = await prepare()
    const seen = Number.MAX_SAFE_INTEGER
    await decidePile(store(), clock, pile, { verdict: 'decline', reason: 'all mould', who, seen })
    await expect(decide(grave[0], 'take')).rejects.toMatchObject({ code: 'pile_decided' })
  })
})
