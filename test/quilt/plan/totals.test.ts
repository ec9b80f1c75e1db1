import { expect, test } from 'vitest'
import { capacityOf } from '../../../src/quilt/plan/capacity.ts'
import { readPile } from '../../../src/quilt/plan/instance.ts'
import { classesInOne } from '../../../src/quilt/plan/totals.ts'

/** The classes of one garment's panels, of which so many are alike, where so many of each size are wanted. */
function classes(mult: number, patterns: number[][], wanted: [number, number]) {
  const pile = readPile({
    sizes: [
      { w: 20, h: 20, rot: true },
      { w: 30, h: 30, rot: true },
    ],
    roles: [{ name: 'focal' }],
    demand: wanted.map((count, size) => ({ size, role: 'focal', count })),
    garments: [{ L: 50, roles: ['focal'], panels: [{ W: 60, H: 60, mult, patterns }] }],
    cloth: { width: 160, step: 36 },
  })
  return classesInOne(capacityOf(pile, pile.garments[0]!))
}

// Counted by hand.

test('a garment that can give all that is of use has one way, and needs no more panels than that', () => {
  const [all] = classes(
    5,
    [
      [2, 0],
      [0, 2],
    ],
    [2, 2],
  )
  expect(all!.patterns).toEqual([[2, 2]])
  expect(all!.ways![0]!.map(({ whole }) => whole.join()).sort()).toEqual(['0,2', '2,0'])
})

test('panels that give less than is wanted are left as they are, where that is fewer patterns', () => {
  const [alike] = classes(
    3,
    [
      [2, 0],
      [0, 2],
    ],
    [20, 20],
  )
  expect(alike).toMatchObject({
    mult: 3,
    patterns: [
      [2, 0],
      [0, 2],
    ],
  })
  expect(alike!.ways).toBeUndefined()
})

test('what a clamp makes alike is one way', () => {
  // Two panels of 4 small, 3 and 1, or 2 large; of the small ones 3 are wanted, of the large ones 2.
  const [all] = classes(
    2,
    [
      [4, 0],
      [3, 1],
      [0, 2],
    ],
    [3, 2],
  )
  expect(all!.patterns).toEqual([[3, 2]])
})
