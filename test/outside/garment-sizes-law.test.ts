import { describe, expect, test } from 'vitest'
import type { Facts, Size } from '../../src/garment/facts.ts'
import { flatOf, sizesOf } from '../../src/garment/garment-sizes.ts'

const cm = (inches: number): number => inches * 2.54
const girthOf = (kind: Facts['kind'], size: Exclude<Size, 'unknown'>): number =>
  2 * cm(flatOf(kind, size)!.widthIn)

describe('night clothes for children', () => {
  // 16 CFR 1615.1(o), and 1616.2(m) from size 8: largest chest girth of tight-fitting sleepwear, cm;
  // both tables from memory, unverified. A pyjama of that size may be so tight, so no more cloth may be promised.
  test.each([
    ['6-12m', 48.3],
    ['12-18m', 49.5],
    ['18-24m', 52.1],
    ['2T', 52.1],
    ['3T', 53.3],
    ['4T', 56],
    ['5T', 58.4],
    ['youth-XS', 61],
    ['youth-S', 66],
    ['youth-M', 71.1],
    ['youth-L', 76.2],
    ['youth-XL', 81.3],
  ] as const)('pyjamas of %s are counted no wider than %f cm around', (size, girth) => {
    expect(girthOf('pyjamas', size)).toBeLessThanOrEqual(girth + 0.1)
    expect(girthOf('pyjamas', size)).toBeGreaterThan(girth - 2)
  })

  // 16 CFR 1615.1(c): an infant garment is sized nine months or smaller; in one piece it is no longer
  // than 64.8 cm (25.75 in), in two pieces no piece longer than 40 cm (15.75 in).
  test.each(['0-3m', '3-6m', '6-12m'] as const)(
    'a baby suit of %s with its legs stays within the length of an infant garment',
    (size) => {
      const whole = cm(flatOf('baby-suit', size)!.lengthIn + flatOf('trousers', size)!.lengthIn)
      expect(whole).toBeLessThanOrEqual(64.8)
    },
  )

  test.each(['0-3m', '3-6m', '6-12m'] as const)(
    'a two-piece night suit of %s has no piece longer than 40 cm',
    (size) => {
      expect(cm(flatOf('pyjamas', size)!.lengthIn)).toBeLessThanOrEqual(40)
      expect(cm(flatOf('trousers', size)!.lengthIn)).toBeLessThanOrEqual(40)
    },
  )
})

/** Chest and bust girths of the body, cm: EN 13402-3, from memory, unverified. */
const men = {
  XS: [78, 86],
  S: [86, 94],
  M: [94, 102],
  L: [102, 110],
  XL: [110, 118],
  '2XL': [118, 129],
  '3XL': [129, 141],
} as const
const women = { S: [82, 90], M: [90, 98], L: [98, 107], XL: [107, 119], '2XL': [119, 131] } as const

/** The most ease that a garment has over the body, cm: from memory, unverified. */
const ease = { tshirt: 12, sweatshirt: 20, 'button-shirt': 18, blouse: 18 } as const

describe('a garment goes round the body it is marked for, with no more than the usual ease', () => {
  const cases = Object.entries(ease).flatMap(([kind, most]) =>
    Object.entries(kind === 'blouse' ? women : men).map(
      ([size, body]) => [kind as Facts['kind'], size as keyof typeof men, body, most] as const,
    ),
  )
  test.each(cases)('a %s in %s', (kind, size, [least, largest], most) => {
    expect(girthOf(kind, size)).toBeGreaterThanOrEqual(least)
    expect(girthOf(kind, size)).toBeLessThanOrEqual(largest + most)
  })
})

test('a larger size is never narrower or shorter, but for the change from years to letters', () => {
  const orders: Size[][] = [
    ['0-3m', '3-6m', '6-12m', '12-18m', '18-24m', '2T', '3T', '4T', '5T'],
    ['youth-XS', 'youth-S', 'youth-M', 'youth-L', 'youth-XL'],
    ['XS', 'S', 'M', 'L', 'XL', '2XL', '3XL', '4XL', '5XL'],
  ]
  const kinds: Facts['kind'][] = ['tshirt', 'pyjamas', 'jeans', 'dress', 'coat', 'skirt', 'jersey']
  const shrinking = kinds.flatMap((kind) =>
    orders.flatMap((order) =>
      order
        .slice(1)
        .filter((size, i) => {
          if (!sizesOf(kind).includes(size as never)) return false
          const [before, now] = [flatOf(kind, order[i] as never)!, flatOf(kind, size as never)!]
          return now.widthIn < before.widthIn || now.lengthIn < before.lengthIn
        })
        .map((size) => `${kind} ${size}`),
    ),
  )
  expect(shrinking).toEqual([])
})
