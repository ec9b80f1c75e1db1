import fc from 'fast-check'
import { expect, test } from 'vitest'
import { domains, type Facts, sizes } from '../../src/garment/facts.ts'
import { type Panel, panelsOf, type Rect } from '../../src/garment/panels.ts'
import { pieceCount, piecesOf, yieldFact, yieldOf } from '../../src/quilt/yield.ts'

const five = { w: 5, h: 5 }
const panel = (w: number, h: number, defects: Rect[] = [], count = 1): Panel => ({
  name: 'cloth',
  w,
  h,
  count,
  defects,
})

test.each<[string, Panel, number]>([
  ['exactly its own size', panel(5, 5), 1],
  ['a quarter inch too small', panel(4.75, 20), 0],
  [
    'two corners lost',
    panel(15, 10, [
      { x: 0, y: 0, w: 2, h: 4 },
      { x: 13, y: 0, w: 2, h: 4 },
    ]),
    5,
  ],
  ['a hole in the middle', panel(15, 15, [{ x: 7, y: 7, w: 1, h: 1 }]), 8],
  ['a defect that only touches', panel(10, 5, [{ x: 5, y: 0, w: 5, h: 5 }]), 1],
  ['two alike', panel(10, 10, [], 2), 8],
])('a panel of %s gives so many 5 in squares', (_, given, count) => {
  expect(pieceCount(given, five)).toBe(count)
})

test('a piece stays upright: 2 × 6 in does not fit across 6 × 2 in', () => {
  expect(pieceCount(panel(6, 2), { w: 2, h: 6 })).toBe(0)
  expect(pieceCount(panel(6, 2), { w: 6, h: 2 })).toBe(1)
})

/** The most pieces by trying every packing on whole inches: slow, and free of any cutting order. */
function most(given: Panel, side: number): number {
  const free = (x: number, y: number, taken: readonly (readonly [number, number])[]) =>
    !given.defects.some(
      (d) => d.x < x + side && d.x + d.w > x && d.y < y + side && d.y + d.h > y,
    ) && !taken.some(([a, b]) => Math.abs(a - x) < side && Math.abs(b - y) < side)
  const places = Array.from({ length: given.w - side + 1 }, (_, x) =>
    Array.from({ length: given.h - side + 1 }, (__, y) => [x, y] as const),
  ).flat()
  const best = (from: number, taken: readonly (readonly [number, number])[]): number =>
    places
      .slice(from)
      .reduce(
        (found, [x, y], at) =>
          free(x, y, taken) ? Math.max(found, best(from + at + 1, [...taken, [x, y]])) : found,
        taken.length,
      )
  return best(0, [])
}

const smallPanel = fc
  .record({
    w: fc.integer({ min: 2, max: 5 }),
    h: fc.integer({ min: 2, max: 5 }),
    defects: fc.array(
      fc.record({
        x: fc.integer({ min: 0, max: 4 }),
        y: fc.integer({ min: 0, max: 4 }),
        w: fc.constant(1),
        h: fc.constant(1),
      }),
      { maxLength: 3 },
    ),
  })
  .map(({ w, h, defects }) =>
    panel(
      w,
      h,
      defects.filter((d) => d.x < w && d.y < h),
    ),
  )

const seeded = { seed: 20260101, numRuns: 300 }

test('the count is never more than any packing gives, and is it where nothing is lost', () => {
  fc.assert(
    fc.property(smallPanel, (given) => {
      const count = pieceCount(given, { w: 2, h: 2 })
      expect(count).toBeLessThanOrEqual(most(given, 2))
      if (given.defects.length === 0) {
        expect(count).toBe(Math.floor(given.w / 2) * Math.floor(given.h / 2))
      }
    }),
    seeded,
  )
})

const anyGarment = fc.record({
  kind: fc.constantFrom(...domains.kind),
  size: fc.constantFrom(...sizes),
  piece: fc.constantFrom(five, { w: 6.5, h: 6.5 }, { w: 2.5, h: 14.5 }, { w: 14.5, h: 14.5 }),
})

test('wear holes never add cloth', () => {
  fc.assert(
    fc.property(anyGarment, ({ kind, size, piece }) => {
      const whole = piecesOf(panelsOf(kind, size), piece)
      expect(piecesOf(panelsOf(kind, size, { wear: 'holes' }), piece)).toBeLessThanOrEqual(whole)
    }),
    seeded,
  )
})

test.each<[Facts['kind'], (typeof sizes)[number]]>([
  ['tshirt', 'M'],
  ['button-shirt', 'L'],
  ['baby-suit', '18-24m'],
  ['hoodie', 'M'],
  ['jeans', 'M'],
  ['apron', 'unknown'],
])('a hole in a %s of size %s costs cloth', (kind, size) => {
  const whole = piecesOf(panelsOf(kind, size), five)
  expect(piecesOf(panelsOf(kind, size, { wear: 'holes' }), five)).toBeLessThan(whole)
})

// Common practice, no source: a baby's suit gives two to four squares of 5 in.
test.each(['0-3m', '3-6m', '6-12m', '12-18m', '18-24m'] as const)(
  'a baby suit of %s gives two to four 5 in squares',
  (size) => {
    const count = piecesOf(panelsOf('baby-suit', size), five)
    expect(count).toBeGreaterThanOrEqual(2)
    expect(count).toBeLessThanOrEqual(4)
    expect(yieldFact('baby-suit', size, { wear: 'sound' })).toBe('few')
  },
)

test.each([
  [0, 'none'],
  [1, 'few'],
  [5, 'few'],
  [6, 'enough'],
] as const)('%i pieces are %s', (count, told) => {
  expect(yieldOf(count)).toBe(told)
})

test('a thing without a kind must be measured', () => {
  expect(yieldFact('other', 'M', { wear: 'sound' })).toBe('unknown')
})
