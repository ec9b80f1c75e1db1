import { afterEach, beforeEach, expect, test } from 'vitest'
import { decideGarment } from '../../src/desk/decisions.ts'
import { sourcedFacts } from '../../src/desk/provenance.ts'
import { review } from '../../src/desk/review.ts'
import type { Tally } from '../../src/quilt/tally.ts'
import { addStaff } from '../help/desk.ts'
import { eachStore } from '../help/stores.ts'
import { confirmPile, openWorkshop, type Script, said, type Workshop } from '../help/workshop.ts'

const clock = () => Date.UTC(2026, 5, 1, 9)

const garments: readonly Script[] = [
  { kind: said('tshirt') },
  { kind: said('tshirt'), wear: said('shattered') },
  { kind: said('tshirt'), details: { asked: '' } },
]

eachStore('a pile under review', (store) => {
  let workshop: Workshop
  beforeEach(async () => {
    workshop = await openWorkshop(store(), clock)
    await confirmPile(workshop.conversation, garments)
  })
  afterEach(() => workshop.close())

  const look = () => review(store().db, workshop.knowledge, '1')
  const decide = async (item: number, verdict: 'take' | 'decline') =>
    decideGarment(store(), clock, (await look()).row.id, item, {
      verdict,
      reason: 'looked at it',
      who: await addStaff(store().db),
      seen: 0,
    })

  test('what the customer left to a person stands by its garment', async () => {
    const found = await look()
    expect(found.garments.map(({ notes }) => notes.length)).toEqual([0, 0, 1])
  })

  test('every fact tells where it comes from', async () => {
    const [first] = (await look()).garments
    const from = Object.fromEntries(
      sourcedFacts(first!.garment).map((fact) => [fact.fact, fact.from]),
    )
    expect(from).toMatchObject({
      kind: 'said',
      surface: 'implied',
      wear: 'said',
      heat: 'label',
      iron: 'label',
      yield: 'counted',
      test: 'untold',
    })
  })

  test('before anything is decided there is nothing to tell of the decisions', async () => {
    expect((await look()).after).toBeNull()
  })

  test('taking a doubtful garment adds its cloth, as was foretold', async () => {
    const before = await look()
    expect(before.undecided).toContain(3)
    await decide(3, 'take')
    const after = await look()
    expect(after.after!.tally).toEqual(before.prospects.get(3)!.taken)
    expect(after.after!.tally.good).toBe(before.pile.tally.good + 1)
    expect(after.undecided).not.toContain(3)
  })

  test('a decision changes nothing of how many quilts the cloth is for', async () => {
    await confirmPile(workshop.conversation, garments, {
      quilts: said('several'),
      quilt_count: { given: { amount: 2, unit: 'quilts' } },
    })
    const wanted = ({ pieces }: Pick<Tally, 'pieces'>) => pieces.map(({ want }) => want)
    const one = await look()
    const two = await review(store().db, workshop.knowledge, '2')
    expect(wanted(two.prospects.get(3)!.taken)).toEqual(wanted(two.pile.tally))
    expect(wanted(two.pile.tally)).not.toEqual(wanted(one.pile.tally))
  })

  test('leaving a garment out changes the price, as was foretold', async () => {
    const before = await look()
    await decide(3, 'decline')
    const after = await look()
    expect(after.after!.estimate).toEqual(before.prospects.get(3)!.left)
    expect(after.after!.estimate!.total).not.toEqual(before.pile.estimate!.total)
  })

  test('a decision changes nothing of what the customer agreed to', async () => {
    const before = await look()
    await decide(3, 'decline')
    const after = await look()
    expect(after.pile.estimate).toEqual(before.pile.estimate)
    expect(after.garments).toHaveLength(3)
    expect(
      await store().db.selectFrom('act').select('seq').where('who', '!=', 'customer').execute(),
    ).toEqual([])
  })
})
