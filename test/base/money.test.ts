import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { decimalsOf, mostMoney, percentOf, plainMoney, readMoney } from '../../src/base/money.ts'

describe('minor units', () => {
  // ISO 4217, table A.1, column "minor unit" (from memory, unverified).
  test.each([
    ['USD', 2],
    ['EUR', 2],
    ['JPY', 0],
    ['KRW', 0],
    ['CLP', 0],
    ['KWD', 3],
    ['BHD', 3],
    ['TND', 3],
  ])('%s has %i decimals', (currency, decimals) => {
    expect(decimalsOf(currency)).toBe(decimals)
  })

  test.each([
    ['412', 'USD', 41_200],
    ['412.5', 'USD', 41_250],
    ['412,05', 'USD', 41_205],
    [' -3.10 ', 'USD', -310],
    ['−3.10', 'USD', -310],
    ['-0', 'USD', 0],
    ['1200', 'JPY', 1_200],
    ['1.234', 'KWD', 1_234],
    ['1.2', 'KWD', 1_200],
    ['0.29', 'USD', 29],
  ])('%s in %s is %i', (typed, currency, minor) => {
    expect(readMoney(typed, currency)).toBe(minor)
  })

  test.each([
    ['', 'USD'],
    ['abc', 'USD'],
    ['1.005', 'USD'],
    ['1.5', 'JPY'],
    ['1.2345', 'KWD'],
    ['1,234.50', 'USD'],
    ['1e5', 'USD'],
    ['0x10', 'USD'],
    ['--5', 'USD'],
    ['5-', 'USD'],
    ['.5', 'USD'],
    ['NaN', 'USD'],
    ['Infinity', 'USD'],
    ['١٢', 'USD'],
    ['9'.repeat(13), 'USD'],
  ])('"%s" is no amount in %s', (typed, currency) => {
    expect(() => readMoney(typed, currency)).toThrow('not_money')
  })

  test('an amount that nobody means is refused, to either side', () => {
    expect(readMoney(String(mostMoney), 'USD')).toBe(mostMoney * 100)
    expect(() => readMoney(`${mostMoney}.01`, 'USD')).toThrow('too_much_money')
    expect(() => readMoney(`-${mostMoney}.01`, 'USD')).toThrow('too_much_money')
  })

  test('what is written into a field is read as the same', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -100_000, max: 100_000 }),
        fc.constantFrom('USD', 'JPY', 'KWD'),
        (minor, currency) => {
          expect(readMoney(plainMoney({ minor, currency }), currency)).toBe(minor)
        },
      ),
    )
  })
})

describe('so many percent of an amount', () => {
  // Streamlined Sales and Use Tax Agreement, section 324: to a whole cent, up where the third decimal is greater
  // than four; as enacted in Rhode Island General Laws § 44-18.1-25 (2006).
  test.each([
    // 6.25 % of 10.99 is 0.686875, of 8.00 exactly 0.50, of 0.40 exactly 0.025.
    [1_099, 6.25, 69],
    [800, 6.25, 50],
    [40, 6.25, 3],
    // 1.234 and 1.235: by the thousandth.
    [12_340, 1, 123],
    [12_350, 1, 124],
    [0, 6.25, 0],
    [1, 50, 1],
    [10_000, 8.875, 888],
    [10_000, 100, 10_000],
    [333, 0, 0],
  ])('of %i minor units %f percent are %i', (minor, percent, tax) => {
    expect(percentOf(minor, percent)).toBe(tax)
  })

  test('is the nearest whole unit, a half going up, in whole numbers', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 100_000_000 }),
        fc.integer({ min: 0, max: 100_000 }),
        (minor, thousandths) => {
          const found = BigInt(percentOf(minor, thousandths / 1_000))
          const twice = 2n * BigInt(minor) * BigInt(thousandths)
          // found - 1/2 <= exact < found + 1/2, times 2 * 100 000.
          expect(twice >= (2n * found - 1n) * 100_000n).toBe(true)
          expect(twice < (2n * found + 1n) * 100_000n).toBe(true)
        },
      ),
    )
  })
})
