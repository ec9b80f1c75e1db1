import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { domains, type FactName, type Facts, type Size, sizes } from '../../src/garment/facts.ts'
import { panelsOf } from '../../src/garment/panels.ts'
import type { Priced } from '../../src/quilt/choices.ts'
import { type Estimate, estimate } from '../../src/quilt/estimate.ts'
import { quiltSizes } from '../../src/quilt/layout.ts'
import { lineCodes } from '../../src/quilt/lines.ts'
import { plainShirt } from '../help/garments.ts'
import { layouts, rates } from '../help/knowledge.ts'
import { priced, shirt } from '../help/priced.ts'

const squares = layouts.find(({ id }) => id === 'plain-squares')!
const throws = [{ layout: squares, size: 'throw' as const }]
const every = layouts.flatMap((layout) => quiltSizes.map((size) => ({ layout, size })))
const line = ({ lines }: Estimate, code: string) => lines.find((one) => one.code === code)!

describe('nine plain shirts for a throw of plain squares', () => {
  const found = estimate({ garments: Array(9).fill(shirt()), quilts: throws, rates })

  test('cost what the rates say, to the cent', () => {
    const prices = Object.fromEntries(found.lines.map(({ code, likely }) => [code, likely]))
    expect(prices).toEqual({
      teardown: 9 * 600,
      stabilising: 0,
      // Nine by eleven squares, which are sewn at the plain price.
      cutting: 99 * 30,
      piecing: 99 * 50,
      // 54 × 66 in are 24 3/4 square feet, and 6 2/3 yd round.
      quilting: 25 * 900,
      finishing: 7 * 500,
      interfacing: 0,
      'top-up': 0,
      // 60 × 72 in with the overage: two widths of 40 in reach over 72 in, twice 60 in, 3 1/2 yd.
      backing: 3.5 * 1300,
      batting: 3000,
      // 260 in of binding: seven strips of 2 1/2 in, 1/2 yd.
      binding: 600,
      // Some 250 m, from a spool of 500.
      thread: 600,
      // 2520 g of shirts in a box of 300; some 1 kg of back, batting and binding comes home with them.
      'post-there': 1700,
      'post-back': 1700,
    })
    const work = 5400 + 99 * 80 + 25 * 900 + 7 * 500
    expect(found.total.likely).toBe(work + 4550 + 3000 + 600 + 600 + 2 * 1700)
    expect(found.currency).toBe('USD')
  })

  test('have no range, since nothing is open', () => {
    expect(found.total.low).toBe(found.total.high)
    expect(found.width).toEqual([])
  })

  test('ask for half as a deposit, and say how long the figure stands', () => {
    // The way to the workshop is paid at the post office.
    expect(found.depositMinor).toBe((found.total.likely - 1700) / 2)
    expect(found).toMatchObject({ validDays: 30, turnaroundWeeks: { low: 8, high: 12 } })
  })

  test('are counted roughly, and the estimate says so', () => {
    expect(found.grounds).toBe('rough')
  })

  test('weigh what nine shirts and their box weigh', () => {
    expect(found).toMatchObject({ weightG: 9 * 280 + 300, box: { box: 'medium', count: 1 } })
  })
})

test('lines come in one order and sum to the total, each with its likely figure in its range', () => {
  const found = estimate({ garments: [shirt(), shirt({ heat: 'unknown' })], quilts: every, rates })
  expect(found.lines.map(({ code }) => code)).toEqual(lineCodes)
  for (const part of ['low', 'likely', 'high'] as const) {
    expect(found.lines.reduce((sum, one) => sum + one[part], 0)).toBe(found.total[part])
  }
  for (const { low, likely, high, because } of found.lines) {
    expect(low).toBeLessThanOrEqual(likely)
    expect(likely).toBeLessThanOrEqual(high)
    expect([low, likely, high].every(Number.isSafeInteger)).toBe(true)
    expect(because.length).toBeGreaterThan(0)
  }
})

test('quantity times price makes the likely figure, where there is one price', () => {
  const { lines } = estimate({ garments: [shirt(), shirt({ wear: 'thin' })], quilts: every, rates })
  for (const { quantity, unitPriceMinor, likely } of lines) {
    if (unitPriceMinor !== null) expect(Math.round(quantity * unitPriceMinor)).toBe(likely)
  }
})

test('a garment kept at home costs nothing and weighs nothing', () => {
  const without = estimate({ garments: [shirt()], quilts: throws, rates })
  const with_ = estimate({ garments: [shirt(), shirt({ soil: 'mould' })], quilts: throws, rates })
  expect(with_).toEqual(without)
})

test.each<[string, Priced, typeof every]>([
  ['layout-undecided', shirt(), layouts.map((layout) => ({ layout, size: 'throw' as const }))],
  ['quilt-size-undecided', shirt(), quiltSizes.map((size) => ({ layout: squares, size }))],
  ['needs-a-person', shirt({ age: 'historic' }), throws],
  ['garment-size-unknown', shirt({}, 'unknown'), throws],
  ['backing-undecided', shirt({ stretch: 'unknown' }), throws],
])('a range that hangs on one thing says so: %s', (code, garment, quilts) => {
  const { width, total } = estimate({ garments: [garment], quilts, rates })
  expect(width.map((one) => one.code)).toEqual([code])
  expect(width[0]).toEqual({
    code,
    low: total.low - total.likely,
    high: total.high - total.likely,
  })
})

test('stabilised garments pay for the work and for the interfacing behind their panels', () => {
  const found = estimate({
    garments: [shirt({ wear: 'thin', test: 'passed' })],
    quilts: throws,
    rates,
  })
  expect(line(found, 'stabilising')).toMatchObject({ likely: 500, quantity: 1 })
  const area = panelsOf('button-shirt', 'L').reduce(
    (sum, { w, h, count }) => sum + w * h * count,
    0,
  )
  const yards = Math.ceil(area / 20 / 9) / 4
  expect(line(found, 'interfacing')).toMatchObject({
    quantity: yards,
    likely: Math.round(yards * 500),
  })
})

test('a layout without a price stops the estimate by name', () => {
  const odd = { ...squares, id: 'spiral' }
  expect(() =>
    estimate({ garments: [shirt()], quilts: [{ layout: odd, size: 'throw' }], rates }),
  ).toThrow(/spiral/)
})

// What is still open in a pile, and one thing of it learnt.
const open = fc.constantFrom('kept', 'open')
const factsWithGaps = fc
  .tuple(
    fc.record(
      Object.fromEntries(
        (Object.keys(domains) as FactName[]).map((name) => [
          name,
          fc.constantFrom(...domains[name]),
        ]),
      ),
    ),
    fc.record(Object.fromEntries((Object.keys(domains) as FactName[]).map((name) => [name, open]))),
  )
  .map(([random, gaps]) => {
    const calm = { ...plainShirt } as Record<string, string>
    for (const [name, gap] of Object.entries(gaps)) {
      const domain = domains[name as FactName] as readonly string[]
      if (gap === 'open' && domain.includes('unknown')) calm[name] = 'unknown'
      else if (random[name] !== 'unknown') calm[name] = random[name]!
    }
    return calm as unknown as Facts
  })

const anyGarment = fc.record({ facts: factsWithGaps, size: fc.constantFrom(...sizes) })

/** The unknowns of a garment, each with the values that may be learnt. */
function unknowns({ facts, size }: { facts: Facts; size: Size }) {
  const gaps = (Object.keys(domains) as FactName[])
    .filter((name) => facts[name] === 'unknown' || (name === 'iron' && facts.iron === 'missing'))
    .flatMap((name) =>
      domains[name]
        .filter((value) => value !== 'unknown' && value !== 'missing')
        .map((value) => ({ facts: { ...facts, [name]: value } as Facts, size })),
    )
  const measured = sizes.filter((one) => one !== 'unknown').map((one) => ({ facts, size: one }))
  return size === 'unknown' ? [...gaps, ...measured] : gaps
}

test('learning a fact never widens the range, nor moves it outside the range there was', () => {
  let learnt = 0
  fc.assert(
    fc.property(
      fc.array(anyGarment, { minLength: 1, maxLength: 4 }),
      fc.shuffledSubarray(every, { minLength: 1, maxLength: 6 }),
      fc.nat(),
      (garments, quilts, pick) => {
        const [first, ...others] = garments
        const ways = unknowns(first!)
        if (ways.length === 0) return
        const after = ways[pick % ways.length]!
        const price = (all: typeof garments) =>
          estimate({ garments: all.map((one) => priced(one.facts, one.size)), quilts, rates }).total
        const before = price([first!, ...others])
        const now = price([after, ...others])
        learnt += 1
        expect(now.low).toBeGreaterThanOrEqual(before.low)
        expect(now.high).toBeLessThanOrEqual(before.high)
      },
    ),
    { seed: 20260101, numRuns: 400 },
  )
  expect(learnt).toBeGreaterThan(300)
})

test('deciding layout or quilt size never widens the range', () => {
  fc.assert(
    fc.property(
      fc.array(anyGarment, { minLength: 1, maxLength: 3 }),
      fc.shuffledSubarray(every, { minLength: 2, maxLength: 8 }),
      (garments, quilts) => {
        const all = garments.map((one) => priced(one.facts, one.size))
        const before = estimate({ garments: all, quilts, rates }).total
        const now = estimate({ garments: all, quilts: quilts.slice(1, 2), rates }).total
        expect(now.low).toBeGreaterThanOrEqual(before.low)
        expect(now.high).toBeLessThanOrEqual(before.high)
      },
    ),
    { seed: 20260101, numRuns: 150 },
  )
})

test('two quilts from one pile are made twice; the garments are taken apart once', () => {
  const garments = Array(4).fill(shirt())
  const one = estimate({ garments, quilts: throws, rates })
  const two = estimate({ garments, quilts: throws, alike: 2, rates })
  const made = ['cutting', 'piecing', 'quilting', 'finishing', 'backing', 'batting', 'binding']
  for (const code of made) {
    expect(line(two, code).likely, code).toBe(2 * line(one, code).likely)
  }
  expect(line(two, 'teardown')).toEqual(line(one, 'teardown'))
  // What is left on a spool sews the next quilt.
  expect(line(two, 'thread').likely).toBe(line(one, 'thread').likely)
  expect(line(two, 'top-up').likely).toBeGreaterThan(line(one, 'top-up').likely)
})
