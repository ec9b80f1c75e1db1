import { expect, test } from 'vitest'
import type { Facts, Size } from '../../../src/garment/facts.ts'
import { panelsOf } from '../../../src/garment/panels.ts'
import { openPlanningLane } from '../../../src/planning/lane.ts'
import { bestPlan } from '../../../src/planning/plan-pile.ts'
import { quiltSizes } from '../../../src/quilt/layout.ts'
import { checkPlan } from '../../../src/quilt/plan/check.ts'
import { pileFor, type Suited } from '../../../src/quilt/plan/from-quilt.ts'
import type { Pile } from '../../../src/quilt/plan/instance.ts'
import {
  cutListOf,
  inAHurry,
  panelAsked,
  patternsOf,
  withPatterns as withSome,
} from '../../../src/quilt/plan/panels.ts'
import { shortageOf } from '../../../src/quilt/plan/shortage.ts'
import { layouts } from '../../help/knowledge.ts'
import { replayed } from '../../help/replay-cuts.ts'

/** Every panel with all its patterns, however long that takes. */
const withPatterns = (pile: Pile): Pile => withSome(pile, patternsOf)

const listOf = (pile: Pile, garment: number, at: number, pattern: readonly number[]) =>
  cutListOf(panelAsked(pile, pile.garments[garment]!, at), pattern)

const layout = (id: string) => layouts.find((one) => one.id === id)!

const suited = (
  id: number,
  kind: Facts['kind'],
  size: Size,
  told: Partial<Suited['facts']> & { graphicIn?: number; must?: boolean } = {},
): Suited => ({
  id,
  facts: { pattern: 'solid', surface: 'woven', oneWay: 'no', ...told },
  graphicIn: told.graphicIn ?? null,
  must: told.must ?? false,
  panels: panelsOf(kind, size),
})

const wanted = (id: string, garments: readonly Suited[], alike = 1) =>
  pileFor({ layout: layout(id), size: 'throw', alike, garments, clothWidthIn: 40 })

test('sizes, roles and counts follow from block arithmetic, in quarter inches', () => {
  // 5 in squares, four by five blocks of nine: 80 focal, 80 background, 20 accent.
  const pile = wanted('quartered-nine-patch', [])
  expect(pile.sizes).toEqual([{ w: 20, h: 20, rot: false }])
  expect(pile.roles.map(({ name }) => name)).toEqual(['focal', 'background', 'accent'])
  expect(pile.demand).toEqual([[80, 80, 20]])
  expect(wanted('quartered-nine-patch', [], 2).demand).toEqual([[160, 160, 40]])
})

test('every layout in every size asks for what the quilt takes', () => {
  for (const one of layouts) {
    for (const size of quiltSizes) {
      const pile = pileFor({ layout: one, size, alike: 1, garments: [], clothWidthIn: 40 })
      expect(pile.demand.flat().reduce((sum, count) => sum + count, 0)).toBeGreaterThan(0)
      expect(pile.sizes.every(({ w, h }) => Number.isInteger(w) && Number.isInteger(h))).toBe(true)
    }
  }
})

test('a single picture gives one whole block from its front, and what is beside it may be cut', () => {
  const tee = suited(1, 'tshirt', 'L', { pattern: 'single', graphicIn: 10 })
  const pile = withPatterns(wanted('framed-panels', [tee]))
  const block = pile.sizes.findIndex(({ w, h }) => w === 58 && h === 58)
  const [front, back] = pile.garments[0]!.panels
  expect(front!.patterns!.length).toBeGreaterThan(0)
  for (const counts of front!.patterns!) expect(counts[block]).toBe(1)
  expect(Math.max(...back!.patterns!.map((counts) => counts[block]!))).toBe(1)
})

test('a picture too near the edge for its block leaves the front uncut', () => {
  const tee = suited(1, 'tshirt', '2T', { pattern: 'single', graphicIn: 9 })
  const pile = withPatterns(wanted('framed-panels', [tee]))
  expect(pile.garments[0]!.panels[0]!.patterns).toEqual([pile.sizes.map(() => 0)])
})

test('pieces of pile and of one-way prints are never turned', () => {
  const turned = (told: Partial<Suited['facts']>) => {
    const pile = wanted('framed-panels', [suited(1, 'jeans', 'M', told)])
    const [most] = withPatterns(pile).garments[0]!.panels[0]!.patterns!.toSorted(
      (a, b) => b.reduce((x, y) => x + y, 0) - a.reduce((x, y) => x + y, 0),
    )
    const list = listOf(pile, 0, 0, most!)!
    return list.pattern.items.some(({ k, w }) => w !== list.panel.pieces[k]!.w)
  }
  expect(turned({ surface: 'pile' })).toBe(false)
  expect(turned({ oneWay: 'unknown' })).toBe(false)
})

test('the plan of a real pile keeps its rules, and every panel it cuts has a list that can be followed', async () => {
  const garments = [
    suited(1, 'button-shirt', 'L', { must: true }),
    suited(2, 'button-shirt', 'XL', { pattern: 'stripe-check' }),
    suited(3, 'jeans', 'M'),
    suited(4, 'sweatshirt', 'M', { surface: 'knit', oneWay: 'yes' }),
    suited(5, 'baby-suit', '6-12m', { surface: 'knit', must: true }),
  ]
  const lane = openPlanningLane()
  try {
    const { pile, plan } = await bestPlan(wanted('quartered-nine-patch', garments), lane)
    expect(checkPlan(pile, plan).problems).toEqual([])
    for (const garment of [1, 5]) {
      expect(plan.supply.some((one) => pile.garments[one.garment]!.id === garment)).toBe(true)
    }
    expect(plan.cuts.length).toBeGreaterThan(3)
    for (const { garment, panel, pattern } of plan.cuts) {
      const list = listOf(pile, garment, panel, pattern)!
      expect(replayed(list.panel, list.pattern)).toEqual([])
    }
    const { roles } = shortageOf(pile, plan)
    expect(roles.reduce((sum, { pieces }) => sum + pieces, 0)).toBeGreaterThan(0)
  } finally {
    await lane.close()
  }
})

test('panels that there is no time for are looked at in a hurry, known ones are not, and nothing is called complete', () => {
  const pile = wanted('framed-panels', [
    suited(1, 'jeans', 'M'),
    suited(2, 'dress', 'XL'),
    suited(3, 'tshirt', 'L', { pattern: 'single', graphicIn: 10 }),
  ])
  const whole = withPatterns({ ...pile, garments: pile.garments.slice(0, 1) })
  const { pile: hurried, hurried: count } = inAHurry({
    ...pile,
    garments: [...whole.garments, ...pile.garments.slice(1)],
  })
  expect(count).toBe(pile.garments.slice(1).flatMap(({ panels }) => panels).length)
  expect(hurried.garments[0]).toEqual(whole.garments[0])
  const [front] = hurried.garments[1]!.panels
  expect(front!.patterns!.length).toBe(pile.sizes.length)
  // What a hurried look says can really be cut: a whole look finds as much or more.
  const slow = withPatterns({ ...pile, garments: [pile.garments[1]!] }).garments[0]!.panels[0]!
  for (const counts of front!.patterns!) {
    expect(slow.patterns!.some((all) => all.every((count, k) => count >= counts[k]!))).toBe(true)
  }
  expect(inAHurry(whole).hurried).toBe(0)
})

test('what was looked at in a hurry has a list too, which gives as much or more', () => {
  const pile = wanted('mixed-columns', [
    suited(1, 'button-shirt', 'L'),
    suited(2, 'sweatshirt', 'M', { surface: 'pile' }),
  ])
  const { pile: hurried } = inAHurry(pile)
  const more: number[] = []
  for (const [g, garment] of hurried.garments.entries()) {
    for (const [at, { patterns }] of garment.panels.entries()) {
      for (const asked of patterns!.filter((counts) => counts.some((count) => count > 0))) {
        const { panel, pattern } = listOf(hurried, g, at, asked)!
        expect(replayed(panel, pattern)).toEqual([])
        const extra = pattern.items.length - asked.reduce((sum, count) => sum + count, 0)
        more.push(extra)
      }
    }
  }
  expect(more.length).toBeGreaterThan(5)
  expect(Math.min(...more)).toBeGreaterThanOrEqual(0)
})
