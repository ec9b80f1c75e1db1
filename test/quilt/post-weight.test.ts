import { expect, test } from 'vitest'
import { readFlowsFolder } from '../../src/intake/flows-folder.ts'
import { ratesOf } from '../../src/intake/knowledge.ts'
import { weightWhy } from '../../src/quilt/post-weight.ts'
import { flowsFolder } from '../help/app.ts'

const rates = ratesOf(readFlowsFolder(flowsFolder))[0]!

// A T-shirt M is 20 × 29 in, L 22 × 30 in (a size chart of the trade, secondary); 180 g in L (from
// memory, unverified): 180 × 580 / 660 = 158.18, rounded up.
test('a garment weighs what its kind weighs in L, by the area of its size', () => {
  expect(weightWhy('tshirt', 'M', rates)).toEqual({
    grams: 159,
    largeG: 180,
    share: 580 / 660,
    figure: 'rates from 2026-01-01/weight/tshirt',
    source: 'from memory, unverified',
  })
  expect(weightWhy('tshirt', 'L', rates)).toMatchObject({ grams: 180, share: 1 })
})

test('a kind that comes in one size, or in none, weighs what stands in the rates', () => {
  expect(weightWhy('tie', 'M', rates)).toMatchObject({ grams: 60, share: 1 })
  expect(weightWhy('other', 'unknown', rates)).toMatchObject({ grams: 500, share: null })
})
