import { describe, expect, test } from 'vitest'
import { checkPlan } from '../../../src/quilt/plan/check.ts'
import { firstPlan } from '../../../src/quilt/plan/first.ts'
import { type Pile, readPile, sharings } from '../../../src/quilt/plan/instance.ts'
import { naivePlan } from '../../../src/quilt/plan/naive.ts'
import type { Plan } from '../../../src/quilt/plan/plan.ts'
import { shortageOf } from '../../../src/quilt/plan/shortage.ts'
import { pileLike, pileOf, sharedPile, smallPile } from '../../help/piles.ts'

/** Two garments, squares of 5 in; by hand: the dark one gives 4, the light one 3, and 5 + 6 are bought. */
const given = {
  sizes: [
    { w: 20, h: 20, rot: true },
    { w: 20, h: 40, rot: false },
  ],
  roles: [
    { name: 'light', garments: true },
    { name: 'dark', garments: true },
    { name: 'sash', garments: false },
  ],
  demand: [
    { size: 0, role: 'light', count: 8 },
    { size: 0, role: 'dark', count: 10 },
    { size: 1, role: 'sash', count: 2 },
  ],
  garments: [
    {
      id: 'navy',
      L: 20,
      roles: ['dark', 'light'],
      must: true,
      minIfUsed: 2,
      panels: [
        {
          W: 40,
          H: 40,
          defects: [],
          mult: 2,
          patterns: [
            [4, 0],
            [0, 2],
          ],
        },
      ],
    },
    {
      id: 'cream',
      L: 85,
      roles: ['light'],
      must: false,
      minIfUsed: 1,
      panels: [{ W: 60, H: 20, defects: [], mult: 1, patterns: [[3, 0]] }],
    },
    { id: 'grey', L: 45, roles: ['light', 'dark'], must: true, minIfUsed: 1, panels: [] },
  ],
  shareMax: 0.5,
  maxRolesPerGarment: 1,
  contrast: [{ light: 'light', dark: 'dark', delta: 30 }],
  cloth: { width: 160, step: 36 },
}
const pile = readPile(given)
const square = { size: 0, w: 20, h: 20, count: 1 }
const plan: Plan = {
  supply: [
    { garment: 0, role: 1, size: 0, count: 4 },
    { garment: 1, role: 0, size: 0, count: 3 },
  ],
  cuts: [
    { garment: 0, panel: 0, pattern: [4, 0], times: 1 },
    { garment: 1, panel: 0, pattern: [3, 0], times: 1 },
  ],
  buy: [
    { role: 0, size: 0, count: 5 },
    { role: 1, size: 0, count: 6 },
    { role: 2, size: 1, count: 2 },
  ],
  cloth: [
    { role: 0, steps: 1, strips: [{ height: 20, times: 1, sections: new Array(5).fill(square) }] },
    { role: 1, steps: 1, strips: [{ height: 20, times: 1, sections: new Array(6).fill(square) }] },
    {
      role: 2,
      steps: 2,
      strips: [
        { height: 40, times: 1, sections: new Array(2).fill({ size: 1, w: 20, h: 40, count: 1 }) },
      ],
    },
  ],
}

test('a plan that keeps every rule has no problem, and its worth is counted anew', () => {
  expect(checkPlan(pile, plan)).toEqual({
    problems: [],
    worth: { lacking: 0, V: 1, Q: 4, P: 13, M: 4 },
  })
})

/** The plan with entry `n` of a list changed. */
const changed = <K extends keyof Plan>(list: K, n: number, by: Partial<Plan[K][number]>): Plan => ({
  ...plan,
  [list]: plan[list].map((one, at) => (at === n ? { ...one, ...by } : one)),
})
const strip = plan.cloth[0]!.strips[0]!

const wrong: [what: string, problem: RegExp, plan: Plan][] = [
  ['one piece more', /4 given and 5 bought are not 8/, changed('supply', 1, { count: 4 })],
  ['half a piece', /is no count/, changed('supply', 1, { count: 2.5 })],
  ['a piece less than none', /is no count/, changed('supply', 1, { count: -1 })],
  ['a role the garment may not play', /may not play the role/, changed('supply', 1, { role: 1 })],
  ['a role that is bought', /garments may not play/, changed('supply', 0, { role: 2, size: 1 })],
  ['a garment that is not there', /no such garment/, changed('supply', 0, { garment: 7 })],
  ['a size that is not there', /no such role or size/, changed('supply', 0, { size: 5 })],
  ['fewer than the least', /less than 2/, changed('supply', 0, { count: 1 })],
  ['more than a share', /more than 5/, changed('supply', 0, { count: 6 })],
  [
    'more roles than one',
    /plays 2 roles/,
    { ...plan, supply: [...plan.supply, { garment: 0, role: 0, size: 0, count: 2 }] },
  ],
  ['a light garment too dark', /nearer than 30/, changed('supply', 1, { garment: 2 })],
  ['more than is cut', /0 are cut/, { ...plan, cuts: plan.cuts.slice(1) }],
  ['a pattern of another panel', /none of its patterns/, changed('cuts', 0, { pattern: [5, 0] })],
  ['a panel cut twice', /cut 2 times, and there are 1/, changed('cuts', 1, { times: 2 })],
  ['a panel that is not there', /none of its patterns/, changed('cuts', 0, { panel: 4 })],
  [
    'a cut garment that is not there',
    /no garment 9/,
    { ...plan, cuts: [...plan.cuts, { garment: 9, panel: 0, pattern: [0, 0], times: 1 }] },
  ],
  ['a piece that nobody buys', /are not 8/, changed('buy', 0, { count: 4 })],
  ['a bought piece in no strip', /0 of 5 are in strips/, { ...plan, cloth: plan.cloth.slice(1) }],
  ['too few steps', /strips of 40 in 1 steps/, changed('cloth', 2, { steps: 1 })],
  ['a step broken', /no number of steps/, changed('cloth', 0, { steps: 0.9 })],
  [
    'a strip as high as no piece',
    /no piece is 30 high/,
    changed('cloth', 0, { strips: [{ ...strip, height: 30 }] }),
  ],
  [
    'a strip wider than the cloth',
    /of a width of 160/,
    changed('cloth', 0, { strips: [{ ...strip, sections: new Array(9).fill(square) }] }),
  ],
  [
    'pieces above the strip',
    /are not in a strip of 20/,
    changed('cloth', 0, { strips: [{ ...strip, sections: [{ ...square, count: 5 }] }] }),
  ],
  [
    'a piece turned that may not be',
    /does not lie as 40 by 20/,
    changed('cloth', 2, {
      strips: [{ height: 40, times: 1, sections: [{ size: 1, w: 40, h: 20, count: 2 }] }],
    }),
  ],
  ['a role with cloth twice', /in two places/, { ...plan, cloth: [...plan.cloth, plan.cloth[0]!] }],
]

test.each(wrong)('%s is found', (_, problem, broken) => {
  expect(checkPlan(pile, broken).problems.join('\n')).toMatch(problem)
})

describe('quilts that share a pile', () => {
  // The light role is one quilt's and the dark one another's; navy may give to both.
  const shared: Pile = {
    ...pile,
    contrast: [],
    maxRoles: 2,
    roles: pile.roles.map((role, quilt) => ({ ...role, quilt: Math.min(quilt, 1) })),
  }
  const navyInBoth: Plan = {
    ...plan,
    supply: [...plan.supply, { garment: 0, role: 0, size: 0, count: 1 }],
    cuts: [{ garment: 0, panel: 0, pattern: [4, 0], times: 2 }, plan.cuts[1]!],
    buy: [{ role: 0, size: 0, count: 4 }, ...plan.buy.slice(1)],
  }
  const { problems, worth } = checkPlan({ ...shared, sharing: 'must-in-all' }, navyInBoth)

  test('count a must-use garment in each of them, where that is agreed', () => {
    const V = (one: Plan, sharing: Pile['sharing']) =>
      checkPlan({ ...shared, ...(sharing && { sharing }) }, one).worth.V
    // Grey gives nothing to either; navy is in the second alone, or in both.
    expect(V(plan, 'as-it-falls')).toBe(1)
    expect(V(plan, undefined)).toBe(1)
    expect(V(plan, 'must-in-all')).toBe(3)
    expect({ problems, V: worth.V }).toEqual({ problems: [], V: 2 })
  })

  test('take no garment that is not in all of them, where all are to be', () => {
    const even = (one: Plan) => checkPlan({ ...shared, sharing: 'evenly' }, one).problems
    expect(even(plan)).toEqual([
      'garment 0 is used, and not in 1 of 2 quilts',
      'garment 1 is used, and not in 1 of 2 quilts',
    ])
    expect(even(navyInBoth)).toEqual(['garment 1 is used, and not in 1 of 2 quilts'])
  })

  test.each(sharings)('have a hurried plan that keeps every rule, %s', (sharing) => {
    for (let seed = 1; seed <= 40; seed += 1) {
      const one = pileOf(sharedPile(seed, sharing))
      expect(checkPlan(one, naivePlan(one)).problems).toEqual([])
      expect(checkPlan(one, firstPlan(one)).problems).toEqual([])
    }
  })

  test('tell which must-use garment is missing where', () => {
    const must = { ...shared, sharing: 'must-in-all' } as const
    expect(shortageOf(must, plan).idle).toEqual([
      { garment: 'navy', why: 'not-in-all', least: 2, missed: 1 },
      { garment: 'grey', why: 'no-piece', least: 1, missed: 2 },
    ])
    expect(shortageOf(shared, plan).idle).toMatchObject([{ garment: 'grey', why: 'no-piece' }])
    expect(shortageOf(must, plan).roles.map(({ role, quilt }) => [role, quilt])).toEqual([
      ['light', 0],
      ['dark', 1],
      ['sash', 1],
    ])
    expect(shortageOf(pile, plan).roles.map(({ quilt }) => quilt)).toEqual([null, null, null])
  })

  test('ask a garment for a piece each, and say so where it has too few', () => {
    const evenly = { ...shared, sharing: 'evenly' } as const
    const few = evenly.garments.map((garment, g) =>
      g === 0
        ? {
            ...garment,
            minIfUsed: 1,
            panels: [{ ...garment.panels[0]!, mult: 1, patterns: [[1, 0]] }],
          }
        : garment,
    )
    const nothing = { supply: [], cuts: [], buy: [], cloth: [] }
    expect(shortageOf({ ...evenly, garments: few }, nothing).idle[0]).toEqual({
      garment: 'navy',
      why: 'too-few',
      least: 2,
      missed: 2,
    })
  })
})

test('pieces too wide for the cloth are lacking, and no rule is broken by that', () => {
  const wide = readPile({ ...given, cloth: { width: 15, step: 36 } })
  const { worth, problems } = checkPlan(wide, { ...plan, cloth: [] })
  expect(problems).toEqual([])
  expect(worth.lacking).toBe(13)
})

describe('the plan of a hurried hand', () => {
  test.each(Array.from({ length: 40 }, (_, n) => n + 1))('keeps every rule: pile %i', (seed) => {
    for (const json of [smallPile(seed), pileLike({ garments: 4 + seed, seed })]) {
      const one = readPile(json)
      const { problems, worth } = checkPlan(one, naivePlan(one))
      expect(problems).toEqual([])
      expect(worth.P).toBeGreaterThanOrEqual(0)
    }
  })

  test('takes the must-use garments first and the rest as they come', () => {
    const { supply } = naivePlan(readPile({ ...given, contrast: [], shareMax: 1 }))
    expect(supply).toEqual([
      { garment: 0, role: 1, size: 0, count: 8 },
      { garment: 1, role: 0, size: 0, count: 3 },
    ])
  })
})
