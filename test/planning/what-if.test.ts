import { afterAll, expect, test } from 'vitest'
import { openPlanningLane } from '../../src/planning/lane.ts'
import { bestPlan, type Planned } from '../../src/planning/plan-pile.ts'
import {
  type Changed,
  oneFewer,
  oneMoreGarment,
  ruleCosts,
  savingsOf,
} from '../../src/planning/what-if.ts'
import { withoutGarment } from '../../src/quilt/plan/changes.ts'
import { readPile } from '../../src/quilt/plan/instance.ts'
import { smallPile } from '../help/piles.ts'

const lane = openPlanningLane()
afterAll(() => lane.close())

/**
 * Squares of 5 in, eighteen from each garment; 16 light and 4 dark are wanted, eight to a strip of cloth, a
 * strip to a step. A garment gives half of a role at most. Grey is too near navy to be light beside it.
 */
const given = {
  sizes: [{ w: 20, h: 20, rot: true }],
  roles: [{ name: 'light' }, { name: 'dark' }],
  demand: [
    { size: 0, role: 'light', count: 16 },
    { size: 0, role: 'dark', count: 4 },
  ],
  garments: [
    { id: 'navy', L: 20, roles: ['dark'] },
    { id: 'cream', L: 85, roles: ['light'] },
    { id: 'grey', L: 30, roles: ['light'] },
  ].map((one) => ({ ...one, must: true, panels: [{ W: 60, H: 60, mult: 2, patterns: [[9]] }] })),
  shareMax: 0.5,
  contrast: [{ light: 'light', dark: 'dark', delta: 30 }],
  cloth: { width: 160, step: 36 },
}

const savings = async (planned: Planned, changes: readonly Changed[]) =>
  (await savingsOf(planned, changes, (pile) => bestPlan(pile, lane))).found

test('what each rule costs, as counted by hand', async () => {
  const planned = await bestPlan(readPile(given), lane)
  // By hand: navy or grey is left out. Without navy, cream and grey give 8 each, and 4 dark ones are bought;
  // with it, 8 light and 2 dark ones would be.
  expect(planned.worth).toEqual({ lacking: 0, V: 1, Q: 1, P: 4, M: 8 })
  const costs = await savings(planned, ruleCosts(planned))
  expect(
    costs.map(({ change, saves }) => [change, saves.garments, saves.steps, saves.pieces]),
  ).toEqual([
    // The same plan, and nobody asks for navy.
    [{ change: 'rule', rule: 'must' }, 1, 0, 0],
    // Grey beside navy: 2 dark ones are bought.
    [{ change: 'rule', rule: 'contrast' }, 1, 0, 2],
    // Navy gives all 4, and cream all 16.
    [{ change: 'rule', rule: 'share' }, 0, 1, 4],
  ])
  expect(costs.every(({ saves }) => saves.proven)).toBe(true)
})

test('one more light garment saves what it gives', async () => {
  const planned = await bestPlan(readPile({ ...given, garments: given.garments.slice(0, 2) }), lane)
  const [first, second] = await savings(planned, oneMoreGarment(planned, 'another'))
  expect(first).toMatchObject({
    change: { change: 'more', role: 'light', garment: 'another', like: 'cream' },
    saves: { steps: 1, pieces: 8, proven: true },
  })
  expect(second).toMatchObject({
    change: { change: 'more', role: 'dark', garment: 'another', like: 'navy' },
    saves: { steps: 1, pieces: 2, proven: true },
  })
})

test('garments that give little are tried without, unless they must be used', async () => {
  const panels = (most: number) => [{ W: 60, H: 60, mult: 1, patterns: [[most]] }]
  const planned = await bestPlan(
    readPile({
      ...given,
      contrast: [],
      garments: [
        { id: 'cream', L: 85, roles: ['light'], panels: panels(8) },
        { id: 'linen', L: 80, roles: ['light'], panels: panels(6) },
        { id: 'lace', L: 90, roles: ['light'], must: true, panels: panels(1) },
        { id: 'cuff', L: 90, roles: ['light'], panels: panels(1) },
      ],
    }),
    lane,
  )
  // 16 light ones are wanted: all give what they have, 4 on average.
  const changes = oneFewer(planned)
  expect(changes.map(({ change }) => change)).toEqual([{ change: 'without', garment: 'cuff' }])
  expect(await savings(planned, changes)).toMatchObject([{ saves: { pieces: -1 } }])
})

test('changes are planned one after another, and what is not planned yet is left', async () => {
  const planned = await bestPlan(readPile(given), lane)
  const changes = ruleCosts(planned)
  const { found, left } = await savingsOf(planned, changes, async (pile) =>
    pile === changes[0]!.pile ? bestPlan(pile, lane) : null,
  )
  expect([found.length, left]).toEqual([1, 2])
})

test('no change for the better makes a plan worse, and no garment that stays home makes it better', async () => {
  for (const seed of [3, 6, 11]) {
    const planned = await bestPlan(readPile(smallPile(seed)), lane)
    for (const { saves } of await savings(planned, oneMoreGarment(planned, 'another'))) {
      expect(saves.garments > 0 || saves.steps >= 0).toBe(true)
    }
    const mild = {
      ...planned.pile,
      garments: planned.pile.garments.map((g) => ({ ...g, must: false })),
    }
    const whole = await bestPlan(mild, lane)
    const fewer = await bestPlan(withoutGarment(mild, 0), lane)
    expect(fewer.worth.Q).toBeGreaterThanOrEqual(whole.worth.Q)
  }
})
