import fc from 'fast-check'
import { expect, test } from 'vitest'
import { besideCost, besideCosts, type Lab, usualRepeat } from '../../../src/quilt/place/colours.ts'
import { place } from '../../../src/quilt/place/index.ts'

const black: Lab = [5, 0, 0]
const charcoal: Lab = [20, 0, 0]
const white: Lab = [95, 0, 0]
const cream: Lab = [90, 0, 8]

test('like beside like costs most, unlike nothing', () => {
  expect(besideCost(black, black)).toBe(30)
  expect(besideCost(black, white)).toBe(0)
  expect(besideCost(black, charcoal)).toBeGreaterThan(besideCost(black, [50, 0, 0]))
})

test('two dark cloths of unlike hue still cost something', () => {
  const [navy, wine]: [Lab, Lab] = [
    [20, 10, -35],
    [20, 40, 15],
  ]
  const lighter: Lab = [60, 40, 15]
  expect(besideCost(navy, wine)).toBeGreaterThanOrEqual(10)
  expect(besideCost(navy, lighter)).toBeLessThan(besideCost(navy, wine))
})

const lab = fc.tuple(
  fc.double({ min: 0, max: 100, noNaN: true }),
  fc.double({ min: -100, max: 100, noNaN: true }),
  fc.double({ min: -100, max: 100, noNaN: true }),
)

test('every table is whole numbers from 0, the same both ways round, dearest on the diagonal', () => {
  fc.assert(
    fc.property(fc.array(lab, { minLength: 1, maxLength: 6 }), (colours) => {
      const table = besideCosts(colours)
      for (const [t, row] of table.entries()) {
        for (const [u, cost] of row.entries()) {
          expect(Number.isInteger(cost) && cost >= 0 && cost <= row[t]!).toBe(true)
          expect(table[u]![t]).toBe(cost)
        }
      }
    }),
  )
})

test('light and dark garments come by turns, whichever they are', () => {
  const colours = [black, charcoal, white, cream]
  const { cells } = place({
    rows: 4,
    cols: 4,
    cells: Array<string>(16).fill('any'),
    types: colours.map((_, n) => ({ garment: n, role: 'any', count: 4 })),
    repeat: usualRepeat,
    adj: besideCosts(colours),
  })
  const isDark = (i: number): boolean => colours[cells[i]!]![0] < 50
  let likePairs = 0
  for (let i = 0; i < 16; i++) {
    if (i % 4 < 3 && isDark(i) === isDark(i + 1)) likePairs++
    if (i < 12 && isDark(i) === isDark(i + 4)) likePairs++
  }
  // Of 24 edges half would be alike by chance.
  expect(likePairs).toBeLessThanOrEqual(4)
})
