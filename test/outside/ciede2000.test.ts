import { expect, test } from 'vitest'
import { difference, type Lab } from '../../src/quilt/place/colours.ts'
import { readCsv } from '../help/csv.ts'

// G. Sharma, W. Wu, E. N. Dalal, "The CIEDE2000 Color-Difference Formula: Implementation Notes,
// Supplementary Test Data, and Mathematical Observations", Color Research and Application 30(1), 2005,
// 21–30, Table 1: 34 pairs in CIELAB with their differences to four places.
const pairs = readCsv(new URL('ciede2000.csv', import.meta.url)).map((row) => {
  const lab = (n: 1 | 2): Lab => [Number(row[`L${n}`]), Number(row[`a${n}`]), Number(row[`b${n}`])]
  return { pair: row.pair!, one: lab(1), other: lab(2), published: Number(row.de00_published) }
})

test('all pairs of the table are there', () => {
  expect(pairs.map(({ pair }) => Number(pair))).toEqual(Array.from({ length: 34 }, (_, n) => n + 1))
})

test.each(pairs)(
  'pair $pair differs by $published, both ways round',
  ({ one, other, published }) => {
    expect(Math.abs(difference(one, other) - published)).toBeLessThanOrEqual(0.0001)
    expect(Math.abs(difference(other, one) - published)).toBeLessThanOrEqual(0.0001)
  },
)
