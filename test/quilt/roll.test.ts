import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type RollPieces, rollLength, roughCut } from '../../src/quilt/roll.ts'

const pieces = (w: number, h: number, count: number): RollPieces => ({ size: { w, h }, count })

test('a piece is cut an inch larger each way before it is backed', () => {
  expect(roughCut({ w: 6.5, h: 14.5 })).toEqual({ w: 7.5, h: 15.5 })
})

test('shorter pieces lie beside longer ones, in the same row', () => {
  // 20 in of roll: 15 and 5 side by side; of five that are 5 in wide four more fit into a row.
  expect(rollLength([pieces(15, 12, 1), pieces(5, 10, 1)], 20)).toBe(12)
  expect(rollLength([pieces(15, 12, 1), pieces(5, 10, 5)], 20)).toBe(12 + 10)
})

test('no piece is turned, even where it would take less', () => {
  expect(rollLength([pieces(11, 2, 2)], 20)).toBe(4)
  expect(rollLength([pieces(2, 11, 2)], 20)).toBe(11)
})

test('a piece wider than the roll is backed in parts of equal width', () => {
  expect(rollLength([pieces(30, 10, 1)], 20)).toBe(20)
  // Two parts of 15 in leave room for two strips of 5 in.
  expect(rollLength([pieces(30, 10, 1), pieces(5, 8, 2)], 20)).toBe(20)
})

test('nothing takes nothing', () => {
  expect(rollLength([], 20)).toBe(0)
  expect(rollLength([pieces(5, 5, 0)], 20)).toBe(0)
})

const quarter = (least: number, most: number) =>
  fc.integer({ min: least * 4, max: most * 4 }).map((n) => n / 4)

test('never less than the area, never more than a row for each piece, whatever the order', () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(quarter(1, 30), quarter(1, 20), fc.integer({ min: 1, max: 12 })), {
        minLength: 1,
        maxLength: 5,
      }),
      fc.constantFrom(20, 22, 44),
      (sizes, width) => {
        const all = sizes.map(([w, h, count]) => pieces(w, h, count))
        const length = rollLength(all, width)
        const area = all.reduce((sum, { size, count }) => sum + size.w * size.h * count, 0)
        const rows = all.reduce(
          (sum, { size, count }) => sum + size.h * count * Math.ceil(size.w / width),
          0,
        )
        expect(length).toBeGreaterThanOrEqual(area / width - 1e-9)
        expect(length).toBeLessThanOrEqual(rows)
        expect(rollLength(all.toReversed(), width)).toBe(length)
      },
    ),
    { seed: 20260101, numRuns: 200 },
  )
})
