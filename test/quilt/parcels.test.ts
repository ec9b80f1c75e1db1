import fc from 'fast-check'
import { expect, test } from 'vitest'
import { parcelsFor } from '../../src/quilt/parcels.ts'
import { rates } from '../help/knowledge.ts'

test.each([
  // Grams, box, how many, what all weigh, what they cost by the shop's steps.
  [0, 'small', 1, 150, 900],
  [800, 'small', 1, 950, 900],
  [1500, 'small', 1, 1650, 1300],
  [1501, 'medium', 1, 1801, 1300],
  [10_000, 'large', 1, 10_550, 2400],
  // The second box is nearly empty: 1 g and its own 550 g.
  [10_001, 'large', 2, 11_101, 2400 + 900],
  [25_000, 'large', 3, 26_650, 2400 + 2400 + 2400],
])('%i g go in %s boxes: %i', (grams, box, count, weightG, priceMinor) => {
  expect(parcelsFor(grams, rates)).toEqual({ box, count, weightG, priceMinor })
})

test('a box heavier than the last step costs what the last step does', () => {
  const short = { ...rates, postage: [{ to_g: 500, price: 700 }] }
  expect(parcelsFor(4000, short).priceMinor).toBe(700)
})

test('more never costs less', () => {
  fc.assert(
    fc.property(fc.nat(60_000), fc.nat(60_000), (a, b) => {
      const [less, more] = [Math.min(a, b), Math.max(a, b)]
      const price = (grams: number) => parcelsFor(grams, rates).priceMinor
      expect(price(less)).toBeLessThanOrEqual(price(more))
    }),
    { seed: 20260101, numRuns: 300 },
  )
})
