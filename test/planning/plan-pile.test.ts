import { afterAll, describe, expect, test } from 'vitest'
import { openPlanningLane } from '../../src/planning/lane.ts'
import { bestPlan, planPile } from '../../src/planning/plan-pile.ts'
import { checkPlan } from '../../src/quilt/plan/check.ts'
import { type Pile, readPile, sharings } from '../../src/quilt/plan/instance.ts'
import { naivePlan } from '../../src/quilt/plan/naive.ts'
import { compareWorth } from '../../src/quilt/plan/plan.ts'
import { type PileJson, pileLike, pileOf, sharedPile, smallPile } from '../help/piles.ts'
import { secondPlan } from '../help/second-plan.ts'

const lane = openPlanningLane()
afterAll(() => lane.close())

/** The best plan, which must keep every rule. */
async function planned(pile: Pile, budgetMs = 20_000) {
  const best = await bestPlan(pile, lane, { budgetMs })
  expect(best.wrong).toBeNull()
  expect(checkPlan(best.pile, best.plan)).toEqual({ problems: [], worth: best.worth })
  return best
}

const seeds = (count: number) => Array.from({ length: count }, (_, n) => n + 1)

describe('a small pile is planned as well as a search of everything plans it', () => {
  test.each(seeds(80))('pile %i', async (seed) => {
    const json = smallPile(seed)
    const { worth, proven, bounds } = await planned(readPile(json))
    expect(proven).toBe(true)
    expect([worth.V, worth.Q, worth.P, worth.M]).toEqual(secondPlan(json))
    expect(bounds).toEqual(worth)
  })
})

describe.each(sharings)('several quilts that share a pile, %s', (sharing) => {
  test.each(seeds(10))(
    'are planned as well as a search of everything plans them: pile %i',
    async (seed) => {
      const json = sharedPile(seed, sharing)
      const { worth, proven, bounds } = await planned(pileOf(json))
      expect(proven).toBe(true)
      expect([worth.V, worth.Q, worth.P, worth.M]).toEqual(secondPlan(json))
      expect(bounds).toEqual(worth)
    },
  )
})

/**
 * Two quilts want six squares each, four to a strip and a strip to a step. The flannel must be used and gives
 * three, one panel for each; the shirt gives eight, the bib two; a garment gives half of a quilt at most.
 */
const heirs = {
  sizes: [{ w: 20, h: 20, rot: true }],
  roles: [
    { name: 'focal', garments: true, quilt: 0 },
    { name: 'focal 2', garments: true, quilt: 1 },
  ],
  demand: [
    { size: 0, role: 'focal', count: 6 },
    { size: 0, role: 'focal 2', count: 6 },
  ],
  garments: [
    { id: 'flannel', must: true, pieces: 3 },
    { id: 'shirt', must: false, pieces: 8 },
    { id: 'bib', must: true, pieces: 1 },
  ].map(({ pieces, ...one }) => ({
    ...one,
    L: 50,
    roles: ['focal', 'focal 2'],
    minIfUsed: 1,
    panels: [{ W: 60, H: 60, defects: [], mult: pieces, patterns: [[1]] }],
  })),
  shareMax: 0.5,
  maxRolesPerGarment: 2,
  contrast: [],
  cloth: { width: 80, step: 20 },
}

// By hand: the shirt gives three to each quilt, six in all. The flannel adds three and the bib one: two of
// twelve are bought. In every quilt the bib is missed once; evenly it is left out, and missed twice.
test.each([
  ['as-it-falls', { V: 0, Q: 1, P: 2, M: 6 }],
  ['must-in-all', { V: 1, Q: 1, P: 2, M: 6 }],
  ['evenly', { V: 2, Q: 2, P: 3, M: 6 }],
] as const)('two heirs and a bib of one square, %s: as counted by hand', async (sharing, worth) => {
  const json = { ...heirs, sharing }
  const best = await planned(pileOf(json))
  expect(best).toMatchObject({ proven: true, worth: { lacking: 0, ...worth } })
  expect(secondPlan(json)).toEqual(Object.values(worth))
})

describe('a pile as a shop meets it keeps every rule, and is never worse than a hurried hand', () => {
  test.each([6, 15, 30, 60])('%i garments', async (garments) => {
    const json = pileLike({ garments, plenty: 1.5, seed: garments })
    const { pile, worth, bounds, proven } = await planned(readPile(json), 3000)
    expect(compareWorth(worth, checkPlan(pile, naivePlan(pile)).worth)).toBeLessThanOrEqual(0)
    for (const aim of ['V', 'Q', 'P', 'M'] as const) {
      if (proven) expect(bounds[aim]).toBe(worth[aim])
      else if (bounds[aim] !== null) expect(bounds[aim]).toBeLessThanOrEqual(worth[aim])
    }
  })
})

test('a plan is there before the proof, and the proof makes it no worse', async () => {
  const pile = readPile(pileLike({ garments: 40, plenty: 1, seed: 8 }))
  const seen = []
  for await (const one of planPile(pile, lane, { firstMs: 1, budgetMs: 3000 })) seen.push(one)
  expect(seen.length).toBeGreaterThan(0)
  for (const { pile: whole, plan } of seen) expect(checkPlan(whole, plan).problems).toEqual([])
  expect(compareWorth(seen.at(-1)!.worth, seen[0]!.worth)).toBeLessThanOrEqual(0)
})

test('panels without patterns get those that cutting gives', async () => {
  const json = pileLike({ garments: 5, seed: 2 })
  const without = {
    ...json,
    garments: json.garments.map((garment) => ({
      ...garment,
      panels: garment.panels.map(({ patterns, ...panel }) => panel),
    })),
  }
  expect((await planned(readPile(without))).worth).toEqual((await planned(readPile(json))).worth)
})

describe('hostile piles get a plan all the same', () => {
  const usual = smallPile(4)
  const garment = usual.garments[0]!
  const nobody = { ...garment, roles: [] }
  const cases: [what: string, pile: Partial<PileJson>][] = [
    ['no garments', { garments: [] }],
    ['no demand', { demand: [] }],
    ['a demand of zero', { demand: [{ size: 0, role: 'focal', count: 0 }] }],
    ['no sizes and no roles', { sizes: [], roles: [], demand: [], garments: [], contrast: [] }],
    [
      'garments without panels',
      { garments: usual.garments.map((one) => ({ ...one, panels: [] })) },
    ],
    ['garments that may play nothing', { garments: [nobody] }],
    ['no roles for a garment', { maxRolesPerGarment: 0 }],
    ['a share of nothing', { shareMax: 0 }],
    ['a share of more than all', { shareMax: 7 }],
    [
      'more pieces asked of a garment than it has',
      { garments: usual.garments.map((one) => ({ ...one, must: true, minIfUsed: 500 })) },
    ],
    [
      'a contrast nobody can keep',
      { contrast: [{ light: 'background', dark: 'focal', delta: 1000 }] },
    ],
    [
      'a contrast of a role with itself',
      { contrast: [{ light: 'focal', dark: 'focal', delta: 5 }] },
    ],
    ['a contrast below zero', { contrast: [{ light: 'background', dark: 'focal', delta: -50 }] }],
    ['pieces wider than the cloth', { cloth: { width: 3, step: 36 } }],
    [
      'pieces larger than every panel',
      {
        sizes: [{ w: 900, h: 900, rot: true }],
        demand: [{ size: 0, role: 'focal', count: 4 }],
        garments: [{ ...garment, panels: [{ W: 80, H: 80, defects: [], mult: 2 }] }],
      },
    ],
    [
      'a panel that is one stain',
      {
        garments: [
          {
            ...garment,
            panels: [{ W: 80, H: 80, defects: [{ x: -5, y: -5, w: 100, h: 100 }], mult: 2 }],
          },
        ],
      },
    ],
    [
      'panels of no cloth',
      { garments: [{ ...garment, panels: [{ W: 0, H: 80, defects: [], mult: 2 }] }] },
    ],
    [
      'no panel of a kind',
      { garments: [{ ...garment, panels: [{ W: 80, H: 80, defects: [], mult: 0 }] }] },
    ],
  ]
  test.each(cases)('%s', async (_, change) => {
    const { proven } = await planned(readPile({ ...usual, ...change }))
    expect(proven).toBe(true)
  })

  test('three hundred garments', async () => {
    const { plan } = await planned(readPile(pileLike({ garments: 300, plenty: 6, seed: 5 })), 3000)
    expect(plan.supply.length).toBeGreaterThan(0)
  })

  test('a light piece that the light garment cannot give beside a dark one is bought', async () => {
    // By hand: one garment may play both roles, but no garment is 10 lighter than itself.
    const { worth } = await planned(
      readPile({
        sizes: [{ w: 20, h: 20, rot: true }],
        roles: [{ name: 'light' }, { name: 'dark' }],
        demand: [
          { size: 0, role: 'light', count: 4 },
          { size: 0, role: 'dark', count: 3 },
        ],
        garments: [
          { L: 50, roles: ['light', 'dark'], panels: [{ W: 60, H: 60, mult: 1, patterns: [[9]] }] },
        ],
        contrast: [{ light: 'light', dark: 'dark', delta: 10 }],
        cloth: { width: 160, step: 36 },
      }),
    )
    expect(worth).toEqual({ lacking: 0, V: 0, Q: 1, P: 3, M: 4 })
  })
})
