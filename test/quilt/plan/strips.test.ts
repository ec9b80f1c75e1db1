import { expect, test } from 'vitest'
import { readPile } from '../../../src/quilt/plan/instance.ts'
import { stripsFor } from '../../../src/quilt/plan/strips.ts'

type Size = { w: number; h: number; rot: boolean; count: number }

/** Strips for one role that wants pieces of these sizes, each as its height and its counts. */
function strips(width: number, ...sizes: Size[]) {
  const pile = readPile({
    sizes,
    roles: [{ name: 'sash', garments: false }],
    demand: sizes.map(({ count }, size) => ({ size, role: 'sash', count })),
    garments: [],
    cloth: { width, step: 36 },
  })
  const { patterns, complete } = stripsFor(pile, 0)
  expect(complete).toBe(true)
  return patterns.map(({ height, counts }) => [height, ...counts]).sort()
}

// Worked by hand.

test('squares of 5 in lie eight to a width of 40 in', () => {
  expect(strips(160, { w: 20, h: 20, rot: true, count: 100 })).toEqual([[20, 8]])
})

test('a strip holds no more than is wanted', () => {
  expect(strips(160, { w: 20, h: 20, rot: true, count: 3 })).toEqual([[20, 3]])
})

test('a piece that may be turned lies both ways', () => {
  // 30 high: five of 14 across, and none lying. 14 high: two of 30, lying.
  expect(strips(70, { w: 14, h: 30, rot: true, count: 50 })).toEqual([
    [14, 2],
    [30, 5],
  ])
})

test('lower pieces stand one above the other beside a high one', () => {
  // 30 high: across 50, two of 20 leave 10, in which 10 by 10 stand three high; and so on.
  const found = strips(
    50,
    { w: 20, h: 30, rot: false, count: 40 },
    { w: 10, h: 10, rot: false, count: 40 },
  )
  expect(found).toEqual([
    [10, 0, 5],
    [30, 0, 15],
    [30, 1, 9],
    [30, 2, 3],
  ])
})

test('a piece wider than the cloth lies the other way, or nowhere', () => {
  expect(strips(40, { w: 60, h: 30, rot: true, count: 5 })).toEqual([[60, 1]])
  expect(strips(40, { w: 60, h: 30, rot: false, count: 5 })).toEqual([])
})

test('what too many kinds of piece make is cut short and said to be', () => {
  const sizes = Array.from({ length: 8 }, (_, n) => ({ w: 8 + 3 * n, h: 9 + 4 * n, rot: true }))
  const pile = readPile({
    sizes,
    roles: [{ name: 'sash', garments: false }],
    demand: sizes.map((_, size) => ({ size, role: 'sash', count: 90 })),
    garments: [],
    cloth: { width: 200, step: 36 },
  })
  expect(stripsFor(pile, 0).complete).toBe(false)
})
