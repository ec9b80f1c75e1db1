import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Facts, Size } from '../../src/garment/facts.ts'
import { grade } from '../../src/garment/grade.ts'
import { panelsOf } from '../../src/garment/panels.ts'
import { type Layout, quiltSizes } from '../../src/quilt/layout.ts'
import { type Counted, tally } from '../../src/quilt/tally.ts'
import { plainShirt } from '../help/garments.ts'
import { knowledge, layouts } from '../help/knowledge.ts'

const layout = (id: string): Layout => layouts.find((one) => one.id === id)!
const quartered = layout('quartered-nine-patch')
const squares = layout('plain-squares')
const framed = layout('framed-panels')

function garment(kind: Facts['kind'], size: Size, told: Partial<Facts> = {}): Counted {
  const facts = { ...plainShirt, ...told, kind }
  const grading = grade(facts, { recipient: 'adult' }, knowledge)
  const panels = panelsOf(kind, size, facts)
  return { grade: grading.grade, facts, panels, layouts: grading.layouts }
}

const shirts = (count: number) => Array.from({ length: count }, () => garment('button-shirt', 'L'))
const graphicTee = garment('tshirt', 'L', {
  surface: 'knit',
  stretch: 'little',
  pattern: 'single',
  graphic: 'fits',
  printMake: 'screen',
})

test('three large shirts give 120 of the 180 squares of a throw, and two more or so fill it', () => {
  const found = tally(shirts(3), quartered, 'throw')
  expect(found.pieces).toEqual([{ size: { w: 5, h: 5 }, want: 180, have: 120 }])
  expect(found.enough).toBe(false)
  expect(found.more).toEqual({ low: 2, high: 5 })
})

// Common practice, no source: a throw in patchwork wants 8 to 10 different garments.
test('where cloth is enough, more garments are asked for variety only, up to eight in a throw', () => {
  const found = tally(shirts(5), quartered, 'throw')
  expect(found.enough).toBe(true)
  expect(found.more).toEqual({ low: 0, high: 3 })
  expect(tally(shirts(9), quartered, 'throw').more).toEqual({ low: 0, high: 0 })
})

test('of baby suits the cloth is counted, not the garments', () => {
  const suits = Array.from({ length: 9 }, () =>
    garment('baby-suit', '6-12m', { surface: 'knit', stretch: 'little' }),
  )
  const found = tally(suits, quartered, 'crib')
  expect(found.enough).toBe(false)
  expect(found.more.low).toBeGreaterThan(15)
})

test('variety is counted by cloth: a baby suit beside big shirts is not one more garment', () => {
  const suits = (count: number) =>
    Array.from({ length: count }, () =>
      garment('baby-suit', '6-12m', { surface: 'knit', stretch: 'little' }),
    )
  const high = (pile: Counted[]) => tally(pile, quartered, 'throw').more.high
  expect(high([...shirts(5), ...suits(3)])).toBe(high(shirts(5)))
  expect(high([...shirts(5), ...suits(12)])).toBeLessThan(high(shirts(5)))
  expect(tally(shirts(8), quartered, 'throw').more.high).toBe(0)
})

test('one central graphic gives nothing to patchwork and its whole panel to a frame', () => {
  expect(tally([graphicTee], squares, 'throw')).toMatchObject({
    good: 1,
    suits: 0,
    pieces: [{ have: 0 }],
  })
  const [panels] = tally([graphicTee], framed, 'throw').pieces
  expect(panels).toMatchObject({ size: { w: 14.5, h: 14.5 }, want: 12, have: 2 })
})

test('a garment that waits for a person, or stays home, is not counted as cloth', () => {
  const found = tally(
    [
      garment('button-shirt', 'L', { age: 'historic' }),
      garment('button-shirt', 'L', { soil: 'mould' }),
    ],
    quartered,
    'throw',
  )
  expect(found).toMatchObject({ good: 0, maybe: 1, home: 1, suits: 0 })
  expect(found.pieces[0]!.have).toBe(0)
})

test('an empty pile asks for about as many T-shirts as the trade does', () => {
  const { more } = tally([], quartered, 'throw')
  expect(more.low).toBeGreaterThanOrEqual(4)
  expect(more.high).toBeLessThanOrEqual(10)
})

test('the figure of more garments is true: with that many of the largest the quilt is full', () => {
  const { more } = tally(shirts(2), squares, 'queen')
  expect(tally(shirts(2 + more.low), squares, 'queen').enough).toBe(true)
  expect(tally(shirts(2 + more.low - 1), squares, 'queen').enough).toBe(false)
})

const anyPile = fc.array(
  fc
    .record({
      kind: fc.constantFrom('tshirt', 'button-shirt', 'jeans', 'baby-suit', 'tie', 'dress'),
      size: fc.constantFrom('S', 'L', '3-6m', 'unknown'),
      wear: fc.constantFrom('sound', 'holes'),
    } as const)
    .map(({ kind, size, wear }) => garment(kind, size as Size, { wear })),
  { maxLength: 8 },
)

test('more garments never give fewer pieces, and no size is counted over what it wants', () => {
  fc.assert(
    fc.property(
      anyPile,
      fc.constantFrom(...layouts),
      fc.constantFrom(...quiltSizes),
      (pile, one, size) => {
        const without = tally(pile, one, size)
        const largest = tally([...pile, garment('button-shirt', 'XL')], one, size)
        const have = (found: typeof without) => found.pieces[0]!.have
        expect(have(largest)).toBeGreaterThanOrEqual(have(without))
        for (const { want, have: got } of largest.pieces) expect(got).toBeLessThanOrEqual(want)
        expect(without.more.low).toBeLessThanOrEqual(without.more.high)
        expect(without.enough).toBe(without.more.low === 0)
      },
    ),
    { seed: 20260101, numRuns: 150 },
  )
})
