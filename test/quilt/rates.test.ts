import { expect, test } from 'vitest'
import { domains } from '../../src/garment/facts.ts'
import { interfacingsOf, ratesAt, readRates } from '../../src/quilt/rates.ts'
import { layouts, rates, readYaml } from '../help/knowledge.ts'

const file = readYaml('rates/2026-01-01.yaml') as Record<string, unknown>
const all = readRates([{ ...file, from: '2027-03-01' }, file])

test.each([
  ['2026-01-01', '2026-01-01'],
  ['2027-02-28', '2026-01-01'],
  ['2027-03-01', '2027-03-01'],
  ['2030-01-01', '2027-03-01'],
])('on %s the rates from %s hold', (date, from) => {
  expect(ratesAt(all, date).from).toBe(from)
})

test('a day before the first rates has no price', () => {
  expect(() => ratesAt(all, '2025-12-31')).toThrow(/no_rate_for_date/)
  expect(() => ratesAt([], '2026-01-01')).toThrow(/no_rate_for_date/)
})

test.each<[string, Record<string, unknown>, RegExp]>([
  ['a broken date', { from: '2026-13-01' }, /from/],
  ['half a cent', { deposit_percent: 12.5 }, /deposit_percent/],
  ['an amount of half a cent', { deposit_amount: 12.5 }, /deposit_amount/],
  ['a kind without a price', { teardown: { tshirt: 300 } }, /teardown/],
  ['an unknown key', { vat: 19 }, /vat/],
  ['a layout that is sewn for nothing', { piecing: { 'plain-squares': 0 } }, /piecing/],
  [
    'a heavier parcel for less',
    {
      postage: [
        { to_g: 1000, price: 900 },
        { to_g: 2000, price: 800 },
      ],
    },
    /postage/,
  ],
  [
    'a step that is no heavier',
    {
      postage: [
        { to_g: 1000, price: 900 },
        { to_g: 1000, price: 950 },
      ],
    },
    /postage/,
  ],
  [
    'a sole no hotter than the glue line',
    {
      interfacing: {
        x: {
          method: 'fuse',
          glue_line_c: 130,
          sole_c: 130,
          weights: ['fine'],
          price_per_yard: 1,
          width_in: 20,
          source: 'x',
        },
      },
    },
    /sole/,
  ],
])('%s is refused', (_, change, why) => {
  expect(() => readRates([{ ...file, ...change }])).toThrow(why)
})

test('two files may not start on the same day', () => {
  expect(() => readRates([file, file])).toThrow(/two files/)
})

test('every layout and every kind of garment has its price and weight', () => {
  expect(Object.keys(rates.piecing).sort()).toEqual(layouts.map(({ id }) => id).sort())
  expect(Object.keys(rates.weights_g)).toEqual(expect.arrayContaining([...domains.kind]))
})

// From the trade's figures: the sole runs 15 to 30 °C over the glue line.
test('every interfacing names its sole heat, 15 to 30 °C over its glue line, and a source', () => {
  for (const { glue_line_c, sole_c, source } of Object.values(rates.interfacing)) {
    expect(sole_c - glue_line_c).toBeGreaterThanOrEqual(15)
    expect(sole_c - glue_line_c).toBeLessThanOrEqual(30)
    expect(source).not.toBe('')
  }
  expect(interfacingsOf(rates).map((it) => it.soleC)).toEqual([115, 140, 170])
})
