import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Facts } from '../../src/garment/facts.ts'
import { panelsOf } from '../../src/garment/panels.ts'
import { type Estimate, estimate } from '../../src/quilt/estimate.ts'
import { pileFor } from '../../src/quilt/plan/from-quilt.ts'
import { naivePlan } from '../../src/quilt/plan/naive.ts'
import { inAHurry } from '../../src/quilt/plan/panels.ts'
import { settledOf } from '../../src/quilt/plan/settled.ts'
import { priceChange } from '../../src/quilt/price-change.ts'
import type { BoughtCloth, Settled } from '../../src/quilt/settled.ts'
import { layouts, rates } from '../help/knowledge.ts'
import { shirt, shirts, squaresOf } from '../help/priced.ts'

const squares = layouts.find(({ id }) => id === 'plain-squares')!
const throws = [{ layout: squares, size: 'throw' as const }]
const line = ({ lines }: Estimate, code: string) => lines.find((one) => one.code === code)!

const cloth = (pieces: number, lengthIn: number, yards: number): BoughtCloth => ({
  role: 'background',
  quilt: 0,
  pieces,
  lengthIn,
  yards,
})

/** Nine by eleven squares: eight shirts give ten each, and nineteen are bought. */
const plan: Settled = {
  pieces: [1, 2, 3, 4, 5, 6, 7, 8].map((n) => squaresOf(n, 10)),
  cloth: [cloth(19, 26, 0.75)],
  proven: true,
}
const input = { garments: shirts(9), quilts: throws, rates }

describe('a throw of plain squares by its plan', () => {
  const found = estimate({ ...input, settled: plan })

  test('takes apart what the plan cuts, and no more', () => {
    expect(line(found, 'teardown')).toMatchObject({ quantity: 8, likely: 8 * 600 })
  })

  test('cuts and sews the pieces of the plan, wherever they come from', () => {
    expect(line(found, 'cutting')).toMatchObject({ quantity: 99, likely: 99 * 30 })
    expect(line(found, 'cutting').workings).toEqual([
      { code: 'pieces-planned', values: { given: 80, bought: 19 } },
    ])
    expect(line(found, 'piecing')).toMatchObject({ quantity: 99, likely: 99 * 50 })
  })

  test('buys the cloth of the plan, role by role', () => {
    const two = [cloth(19, 26, 0.75), { ...cloth(4, 6.5, 0.25), role: 'accent' }]
    const both = line(estimate({ ...input, settled: { ...plan, cloth: two } }), 'top-up')
    expect(both).toMatchObject({ quantity: 1, likely: 1300 })
    expect(both.workings.map(({ values }) => values)).toEqual([
      { quilts: 1, quilt: 1, role: 'background', pieces: 19, length: 26, yards: 0.75 },
      { quilts: 1, quilt: 1, role: 'accent', pieces: 4, length: 6.5, yards: 0.25 },
    ])
  })

  test('has no range, since nothing is open, and sums up', () => {
    expect(found.total.low).toBe(found.total.high)
    expect(found.width).toEqual([])
    expect(found.lines.reduce((sum, { likely }) => sum + likely, 0)).toBe(found.total.likely)
  })

  test('says whether a better plan may still be found', () => {
    expect(found.grounds).toBe('plan')
    expect(estimate({ ...input, settled: { ...plan, proven: false } }).grounds).toBe('plan-so-far')
    expect(estimate({ ...input, settled: null }).grounds).toBe('rough')
  })

  test('brings more home than was sent: back, batting, binding and bought cloth', () => {
    // 54 × 66 in of cloth and of batting, 260 in of binding, 3/4 yd of 40 in: at 140 and 130 g/m².
    const m2 = (squareIn: number) => squareIn * 0.0254 ** 2
    const added = m2(54 * 66 + 260 * 2.5 + 27 * 40) * 140 + m2(54 * 66) * 130
    expect(line(found, 'post-back').workings).toEqual([
      { code: 'post-back', values: { came: 9 * 280, added: Math.round(added) } },
    ])
  })
})

test('a plan that cuts a garment which is not there is not priced', () => {
  const settled = { ...plan, pieces: [squaresOf(77, 10)] }
  expect(() => estimate({ ...input, settled })).toThrow(/77/)
})

describe('interfacing', () => {
  const thin = { wear: 'thin', test: 'passed' } as const
  const behind = (garments: ReturnType<typeof shirts>, settled: Partial<Settled>) =>
    line(estimate({ ...input, garments, settled: { ...plan, ...settled } }), 'interfacing')

  test('is packed for just the pieces that are backed, an inch larger both ways', () => {
    const garments = [shirt(thin, 'L', 1), shirt({}, 'L', 2)]
    // Eleven squares of 7 1/2 in, two across a roll of 20 in: six rows, 45 in.
    const found = behind(garments, { pieces: [squaresOf(1, 11), squaresOf(2, 40)] })
    expect(found).toMatchObject({ quantity: 1.25, likely: 625, unitPriceMinor: 500 })
    expect(found.workings).toEqual([
      {
        code: 'roll',
        values: { roll: 'light', pieces: 11, over: 1, width: 20, length: 45, yards: 1.25 },
      },
    ])
  })

  test('of one class is packed on one roll', () => {
    const garments = [shirt(thin, 'L', 1), shirt(thin, 'L', 2)]
    // One and one side by side: a single row.
    const found = behind(garments, { pieces: [squaresOf(1, 1), squaresOf(2, 1)] })
    expect(found).toMatchObject({ quantity: 0.25, likely: 125 })
  })

  test('fused and sewn in are counted apart', () => {
    const sewnIn = { wear: 'thin', iron: 'none', heat: 'none' } as const
    const garments = [shirt(thin, 'L', 1), shirt(sewnIn, 'L', 2)]
    expect(garments[1]!.grading.press.backing).toBe('sewn-in')
    const found = behind(garments, { pieces: [squaresOf(1, 11), squaresOf(2, 11)] })
    expect(found.workings.map(({ values }) => [values.roll, values.yards])).toEqual([
      ['light', 1.25],
      // Five across 44 in: three rows, 22 1/2 in.
      ['sewn-in', 0.75],
    ])
    expect(found).toMatchObject({ quantity: 2, likely: 625 + 300, unitPriceMinor: null })
  })
})

test.each(layouts)('a plan of $id is priced piece by piece and step by step of cloth', (layout) => {
  const garments = shirts(9)
  const pile = pileFor({
    layout,
    size: 'throw',
    alike: 2,
    garments: garments.map(({ n, facts, kind, size }) => ({
      id: n,
      facts,
      graphicIn: null,
      must: false,
      panels: panelsOf(kind, size),
    })),
    clothWidthIn: rates.cloth.usable_width_in,
  })
  const looked = inAHurry(pile).pile
  const plan = naivePlan(looked)
  const settled = settledOf(looked, plan, false)
  const quilts = [{ layout, size: 'throw' as const }]
  const found = estimate({ garments, quilts, alike: 2, rates, settled })
  const wanted = pile.demand.flat().reduce((sum, count) => sum + count, 0)
  const quarterYards = plan.cloth.reduce((sum, { steps }) => sum + steps, 0)
  expect(line(found, 'cutting').quantity).toBe(wanted)
  expect(line(found, 'piecing').quantity).toBe(wanted)
  expect(line(found, 'top-up')).toMatchObject({
    quantity: quarterYards / 4,
    likely: quarterYards * 325,
  })
  expect(line(found, 'teardown').quantity).toBe(
    new Set(plan.supply.map(({ garment }) => garment)).size,
  )
})

const openFacts: readonly Partial<Facts>[] = [
  {},
  { stretch: 'unknown' },
  { wear: 'unknown' },
  { age: 'historic' },
  { graphic: 'unknown' },
  { wear: 'thin' },
]

/** Piles with open ends, and plans for them; a plan need not be a good one. */
const pileWithPlan = fc
  .array(
    fc.record({
      told: fc.constantFrom(...openFacts),
      size: fc.constantFrom('L' as const, 'unknown' as const),
      gives: fc.nat(15),
    }),
    { minLength: 1, maxLength: 4 },
  )
  .map((all) => ({
    garments: all.map(({ told, size }, n) => shirt(told, size, n + 1)),
    pieces: all.flatMap(({ gives }, n) => (gives > 0 ? [squaresOf(n + 1, gives)] : [])),
  }))

const every = layouts.map((layout) => ({ layout, size: 'throw' as const }))

test('what is open moves the plan’s price as far as it moves the rough one, and never below nothing', () => {
  fc.assert(
    fc.property(
      pileWithPlan,
      fc.shuffledSubarray(every, { minLength: 1 }),
      fc.nat(6),
      ({ garments, pieces }, quilts, yards) => {
        const settled = { pieces, cloth: [cloth(9, yards * 36, yards)], proven: true }
        const rough = estimate({ garments, quilts, rates })
        const found = estimate({ garments, quilts, rates, settled })
        const codes = (one: Estimate) => one.lines.map(({ code }) => code)
        expect(codes(found)).toEqual(codes(rough))
        for (const [n, { low, likely, high, ...of }] of found.lines.entries()) {
          const before = rough.lines[n]!
          expect(high - likely).toBe(before.high - before.likely)
          expect(low).toBe(Math.max(0, likely + before.low - before.likely))
          expect(low).toBeLessThanOrEqual(likely)
          if (of.unitPriceMinor !== null) {
            expect(Math.round(of.quantity * of.unitPriceMinor)).toBe(likely)
          }
        }
        // Each reason moves the total up as far as before, and down no further.
        for (const { code, low, high } of rough.width) {
          const now = found.width.find((one) => one.code === code) ?? { low: 0, high: 0 }
          expect(now.high).toBe(high)
          expect(now.low).toBeGreaterThanOrEqual(low)
        }
        expect(found.width.length).toBeLessThanOrEqual(rough.width.length)
      },
    ),
    { seed: 20260101, numRuns: 40 },
  )
})

describe('one garment fewer', () => {
  const before = estimate({ ...input, settled: plan })
  const without = {
    pieces: plan.pieces.filter(({ garment }) => garment !== 8),
    cloth: [cloth(29, 32.5, 1)],
    proven: true,
  }
  const after = estimate({ ...input, garments: shirts(8), settled: without })
  const change = priceChange(before, after)

  test('says what it does to each line that changes, and in all', () => {
    expect(change.lines).toEqual([
      { code: 'teardown', byMinor: -600 },
      { code: 'top-up', byMinor: 325 },
    ])
    expect(change).toMatchObject({ totalMinor: -275, currency: 'USD' })
  })

  test('there and back again changes nothing', () => {
    const back = priceChange(after, before)
    expect(back.totalMinor).toBe(-change.totalMinor)
    expect(back.lines).toEqual(
      change.lines.map(({ code, byMinor }) => ({ code, byMinor: -byMinor })),
    )
    expect(priceChange(before, before)).toEqual({ lines: [], totalMinor: 0, currency: 'USD' })
  })
})
