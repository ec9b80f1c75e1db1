import { describe, expect, test } from 'vitest'
import type { Facts, Size } from '../../../src/garment/facts.ts'
import { panelsOf } from '../../../src/garment/panels.ts'
import { openPlanningLane } from '../../../src/planning/lane.ts'
import { bestPlan } from '../../../src/planning/plan-pile.ts'
import { quiltSizes, readLayout } from '../../../src/quilt/layout.ts'
import { hasRule, rules, withoutRule } from '../../../src/quilt/plan/changes.ts'
import { checkPlan } from '../../../src/quilt/plan/check.ts'
import {
  contrastWants,
  designsFor,
  pileFor,
  type Suited,
} from '../../../src/quilt/plan/from-quilt.ts'
import type { Pile } from '../../../src/quilt/plan/instance.ts'
import { shareOf } from '../../../src/quilt/plan/limits.ts'
import {
  cutListOf,
  inAHurry,
  panelAsked,
  patternsOf,
  withPatterns as withSome,
} from '../../../src/quilt/plan/panels.ts'
import { shortageOf } from '../../../src/quilt/plan/shortage.ts'
import { layouts, readYaml } from '../../help/knowledge.ts'
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
  facts: { pattern: 'solid', surface: 'woven', oneWay: 'no', stretch: 'none', ...told },
  graphicIn: told.graphicIn ?? null,
  must: told.must ?? false,
  panels: panelsOf(kind, size),
})

const quilt = { size: 'throw', alike: 1, clothWidthIn: 40 } as const

const wanted = (id: string, garments: readonly Suited[], alike = 1) =>
  pileFor({ ...quilt, layout: layout(id), alike, garments })

test('sizes, roles and counts follow from block arithmetic, in quarter inches', () => {
  // 5 in squares, four by five blocks of nine: 80 focal, 80 background, 20 accent.
  const pile = wanted('quartered-nine-patch', [])
  expect(pile.sizes).toEqual([{ w: 20, h: 20, rot: false }])
  expect(pile.roles.map(({ name }) => name)).toEqual(['focal', 'background', 'accent'])
  expect(pile.demand).toEqual([[80, 80, 20]])
  const two = wanted('quartered-nine-patch', [], 2)
  expect(two.demand).toEqual([[80, 80, 20, 80, 80, 20]])
  expect(two.roles.slice(2, 5)).toEqual([
    { name: 'accent', called: 'accent', quilt: 0, garments: true },
    { name: 'focal 2', called: 'focal', quilt: 1, garments: true },
    { name: 'background 2', called: 'background', quilt: 1, garments: true },
  ])
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

test('a single picture gives one whole block of its own size, and what is beside it may be cut', () => {
  // By hand: 10 in and 3/4 in of air on each side are 12 in, cut at 12 1/2 in.
  const tee = suited(1, 'tshirt', 'XL', { pattern: 'single', graphicIn: 10 })
  const pile = withPatterns(wanted('framed-panels', [tee]))
  const own = pile.sizes.findIndex(({ w, h }) => w === 50 && h === 50)
  const whole = pile.sizes.findIndex(({ w, h }) => w === 58 && h === 58)
  expect([pile.demand[own]![0], pile.demand[whole]![0]]).toEqual([1, 11])
  const [front, back] = pile.garments[0]!.panels
  expect(front!.patterns!.length).toBeGreaterThan(0)
  for (const counts of front!.patterns!) expect(counts[own]).toBe(1)
  expect(Math.max(...back!.patterns!.map((counts) => counts[whole]!))).toBeGreaterThan(0)
  for (const counts of back!.patterns!) expect(counts[own]).toBe(0)
})

test('a picture too near the edge for its block has no frame, and leaves the front uncut', () => {
  const tee = suited(1, 'tshirt', '2T', { pattern: 'single', graphicIn: 9 })
  const pile = withPatterns(wanted('framed-panels', [tee]))
  expect(pile.garments[0]!.panels[0]!.patterns).toEqual([pile.sizes.map(() => 0)])
  expect(pile.sizes).toEqual(wanted('framed-panels', []).sizes)
})

test('pieces of pile, of one-way prints and of cloth on the bias are never turned', () => {
  const file = readYaml('layouts/framed-panels.yaml') as Record<string, unknown>
  const fromGarments = readLayout({
    ...file,
    blocks: { panel: { make: 'grid', patch_in: 14, roles: [['focal']] } },
    sash: { width_in: 2, role: 'background', corner_role: 'accent', from: 'garments' },
  })
  const turned = (told: Partial<Suited['facts']>) => {
    const garments = [suited(1, 'button-shirt', 'S', told)]
    const pile = pileFor({ ...quilt, layout: fromGarments, garments })
    const { panels } = withPatterns(pile).garments[0]!
    return panels.some(({ patterns }, at) =>
      patterns!.some((counts) => {
        const { panel, pattern } = listOf(pile, 0, at, counts)!
        return pattern.items.some(({ k, w }) => w !== panel.pieces[k]!.w)
      }),
    )
  }
  expect(turned({})).toBe(true)
  expect(turned({ surface: 'pile' })).toBe(false)
  expect(turned({ oneWay: 'yes' })).toBe(false)
  expect(turned({ oneWay: 'unknown' })).toBe(false)
  expect(turned({ stretch: 'bias' })).toBe(false)
})

describe('pictures', () => {
  const tee = (id: number, graphicIn: number, told: { must?: boolean } = {}) =>
    suited(id, 'tshirt', 'XL', { pattern: 'single', graphicIn, ...told })
  const sidesOf = (garments: readonly Suited[], alike = 1) =>
    designsFor({ ...quilt, layout: layout('framed-panels'), garments, alike }).map(
      ({ blocks, set }) =>
        set.flat().flatMap((name) => {
          const block = blocks[name]!
          return block.make === 'framed' && block.piece_in < 14 ? [block.piece_in] : []
        }),
    )

  test('are dealt out among the quilts, must-use ones first', () => {
    const garments = [tee(1, 6), tee(2, 7), tee(3, 8, { must: true }), tee(4, 9)]
    expect(sidesOf(garments)).toEqual([[10, 8, 9, 11]])
    expect(sidesOf(garments, 2)).toEqual([
      [10, 9],
      [8, 11],
    ])
  })

  test('of garments that staff keep from the main role get no block', () => {
    const garments = [tee(1, 6), { ...tee(2, 7), roles: ['background'] as const }]
    expect(sidesOf(garments)).toEqual([[8]])
  })
})

test('a garment plays what staff and the table let it play, and nothing that is bought', () => {
  const played = (id: string, change: Partial<Suited>, pattern: Facts['pattern'] = 'solid') => {
    const garment = { ...suited(1, 'tshirt', 'XL', { pattern, graphicIn: 9 }), ...change }
    const { roles, garments } = wanted(id, [garment], 2)
    return garments[0]!.roles.map((role) => roles[role]!.name)
  }
  expect(played('framed-panels', {})).toEqual(['focal', 'focal 2'])
  expect(played('mixed-columns', {}, 'single')).toHaveLength(6)
  expect(played('mixed-columns', { rest: false }, 'single')).toEqual(['focal', 'focal 2'])
  expect(played('mixed-columns', { rest: false })).toHaveLength(6)
  expect(played('mixed-columns', { roles: ['accent'] })).toEqual(['accent', 'accent 2'])
  expect(played('mixed-columns', { roles: null })).toHaveLength(6)
  const { roles } = wanted('framed-panels', [])
  expect(roles.map(({ garments }) => garments)).toEqual([true, false, false])
})

describe('light and dark', () => {
  const pile = (ls: readonly (number | null | undefined)[], id = 'plain-squares') => {
    const garments = ls.map((L, n) => ({
      ...suited(n + 1, 'button-shirt', 'L'),
      ...(L !== undefined && { L }),
    }))
    const asked = { ...quilt, layout: layout(id), garments, alike: 2 }
    return { ...pileFor(asked), wants: contrastWants(asked) }
  }

  test('are asked for in every quilt where all garments are known', () => {
    const { roles, contrast, wants, garments } = pile([80, 20])
    const told = contrast.map(({ light, dark, delta }) => [
      roles[light]!.name,
      roles[dark]!.name,
      delta,
    ])
    expect(told).toEqual([
      ['background', 'focal', 20],
      ['background 2', 'focal 2', 20],
    ])
    expect(garments.map(({ L }) => L)).toEqual([80, 20])
    expect(wants).toEqual([])
  })

  test('are left out where one is not, and its garment is named', () => {
    expect(pile([80, null, 20, undefined])).toMatchObject({ contrast: [], wants: [2, 4] })
    expect(pile([null], 'framed-panels')).toMatchObject({ contrast: [], wants: [] })
  })

  test('pull against must-use garments, and what each of the rules costs can be told', () => {
    const { garments, ...rest } = pile([80, 70])
    const bound = { ...rest, garments: garments.map((one) => ({ ...one, must: true })) }
    expect(rules.filter((rule) => hasRule(bound, rule))).toEqual(['must', 'contrast', 'share'])
    expect(hasRule(withoutRule(bound, 'contrast'), 'contrast')).toBe(false)
    expect(hasRule(withoutRule(bound, 'must'), 'must')).toBe(false)
  })
})

test('a role of fewer pieces than a lively quilt has garments takes one of a garment', () => {
  // Two of twelve small blocks are panels where hardly any are wanted.
  const few = {
    ...layout('mixed-columns'),
    mix: { picture: 'panel', other: 'four', least: 0.1, most: 0.2 },
  }
  const tee = suited(1, 'tshirt', 'XL', { pattern: 'single', graphicIn: 9 })
  const pile = pileFor({ ...quilt, layout: few, size: 'crib', garments: [tee] })
  expect(pile.demand.map((row) => row[0])).toContain(2)
  expect(shareOf(pile, 0)).toBe(1)
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
  const pile = wanted('mixed-columns', [
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
