import { afterAll, describe, expect, test } from 'vitest'
import type { Facts, Size } from '../../../src/garment/facts.ts'
import { panelsOf } from '../../../src/garment/panels.ts'
import { shortageWords } from '../../../src/papers/shortage-words.ts'
import { openPlanningLane } from '../../../src/planning/lane.ts'
import { bestPlan } from '../../../src/planning/plan-pile.ts'
import { checkPlan } from '../../../src/quilt/plan/check.ts'
import { pileFor, type QuiltWanted, type Suited } from '../../../src/quilt/plan/from-quilt.ts'
import { sharings } from '../../../src/quilt/plan/instance.ts'
import { shortageOf } from '../../../src/quilt/plan/shortage.ts'
import { language, readPageWords } from '../../../src/words/words.ts'
import { layouts } from '../../help/knowledge.ts'

const lane = openPlanningLane()
afterAll(() => lane.close())

const words = language('en', readPageWords().get('en')!)

const suited = (
  id: number,
  kind: Facts['kind'],
  size: Size,
  told: Partial<Suited> = {},
): Suited => ({
  id,
  facts: { pattern: 'solid', surface: 'woven', oneWay: 'no', stretch: 'none' },
  graphicIn: null,
  must: false,
  panels: panelsOf(kind, size),
  ...told,
})

const pictured = (graphicIn: number): Partial<Suited> => ({
  facts: { pattern: 'single', surface: 'knit', oneWay: 'no', stretch: 'little' },
  graphicIn,
})

/** The plan, which must keep every rule, and what it leaves open. */
async function planned(
  id: string,
  garments: readonly Suited[],
  { budgetMs = 20_000, ...more }: Partial<QuiltWanted> & { readonly budgetMs?: number } = {},
) {
  const layout = layouts.find((one) => one.id === id)!
  const wanted: QuiltWanted = {
    layout,
    size: 'throw',
    alike: 1,
    garments,
    clothWidthIn: 40,
    ...more,
  }
  const { pile, plan, worth, proven, wrong } = await bestPlan(pileFor(wanted), lane, {
    budgetMs,
  })
  expect(wrong).toBeNull()
  expect(checkPlan(pile, plan)).toEqual({ problems: [], worth })
  const shortage = shortageOf(pile, plan)
  return { pile, plan, worth, proven, shortage, said: shortageWords(shortage, words) }
}

describe.each(layouts.map(({ id }) => id))('%s', (id) => {
  test('no garment: all is bought, and it is said', async () => {
    const { worth, proven, said } = await planned(id, [])
    expect(proven).toBe(true)
    expect(worth.Q).toBeGreaterThan(0)
    expect(said).toMatch(/^There are no garments yet, so every piece is bought\./)
  })

  test('one garment alone, which must be used', async () => {
    const { plan, worth } = await planned(id, [suited(1, 'button-shirt', 'XL', { must: true })])
    expect(worth.V).toBe(0)
    expect(plan.supply.length).toBeGreaterThan(0)
  })

  test('no cloth that gives a piece: each must-use garment has its sentence', async () => {
    const tie = suited(1, 'other', 'unknown', { must: true })
    const { worth, shortage, said } = await planned(id, [tie])
    expect(worth.V).toBe(1)
    expect(shortage.idle).toMatchObject([{ garment: 1, why: 'no-piece' }])
    expect(said).toMatch(/1 must be used, and none of its panels is large enough/)
  })

  test('roles that nobody may play are bought', async () => {
    const barred = suited(1, 'button-shirt', 'L', { must: true, roles: [] })
    const { said, proven } = await planned(id, [barred])
    expect(proven).toBe(true)
    expect(said).toMatch(/1 must be used, and no role that it may play wants a piece/)
  })
})

test('three hundred garments have a plan, for one quilt and for eight', async () => {
  const kinds = ['button-shirt', 'jeans', 'tshirt', 'baby-suit'] as const
  const sizes = ['L', 'M', 'XL', '6-12m'] as const
  const garments = Array.from({ length: 300 }, (_, n) =>
    suited(n, kinds[n % 4]!, sizes[n % 4]!, { must: n % 50 === 0, L: 10 + ((n * 37) % 80) }),
  )
  const one = await planned('quartered-nine-patch', garments, { budgetMs: 1500 })
  expect(one.plan.supply.length).toBeGreaterThan(20)
  expect(one.worth).toMatchObject({ lacking: 0, V: 0 })
  const all = await planned('quartered-nine-patch', garments, {
    alike: 8,
    sharing: 'as-it-falls',
    budgetMs: 1500,
  })
  expect(all.plan.supply.length).toBeGreaterThan(100)
})

describe('a picture larger than any block', () => {
  test.each(['framed-panels', 'mixed-columns'])(
    'in %s leaves its front whole, and the plan stands',
    async (id) => {
      const garment = suited(1, 'tshirt', '3XL', { must: true, ...pictured(30) })
      const { pile, plan, worth } = await planned(id, [garment])
      expect(plan.cuts.some(({ panel }) => pile.garments[0]!.panels[panel]!.picture)).toBe(false)
      expect(worth.V).toBe(0)
    },
  )
})

test('more pictures than blocks: those that must be used are in', async () => {
  const garments = Array.from({ length: 9 }, (_, n) =>
    suited(n, 'tshirt', 'XL', { must: n > 2, ...pictured(6 + (n % 5)) }),
  )
  const { worth, plan, pile } = await planned('framed-panels', garments, { size: 'crib' })
  expect(worth.V).toBe(0)
  const given = new Set(plan.supply.map(({ garment }) => pile.garments[garment]!.id))
  expect([...given].sort()).toEqual([3, 4, 5, 6, 7, 8])
})

test.each(sharings)(
  'eight quilts of one baby suit, %s: a plan, and what is missing',
  async (sharing) => {
    const suit = suited(1, 'baby-suit', '0-3m', { must: true })
    const { worth, shortage, said } = await planned('quartered-nine-patch', [suit], {
      alike: 8,
      sharing,
    })
    const gives = { 'must-in-all': 'not-in-all', evenly: 'too-few', 'as-it-falls': undefined }
    expect(shortage.idle[0]?.why).toBe(gives[sharing])
    expect(worth.V > 0).toBe(sharing !== 'as-it-falls')
    expect(said).toMatch(/Quilt 8: /)
  },
)
