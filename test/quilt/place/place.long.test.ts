import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { search } from '../../../src/quilt/place/anneal.ts'
import { boardOfGrid } from '../../../src/quilt/place/board.ts'
import { totalCost, touchingPairs } from '../../../src/quilt/place/cost.ts'
import { prove } from '../../../src/quilt/place/exact.ts'
import { place } from '../../../src/quilt/place/index.ts'
import type { Instance } from '../../../src/quilt/place/instance.ts'
import { chequered } from '../../../src/quilt/place/start.ts'
import {
  everyPlacement,
  instanceOf,
  isFair,
  leastOfAll,
  plainBoard,
  plainCost,
} from '../../help/boards.ts'

describe('against every placement there is', () => {
  test.each([
    ['2 × 3, costs the same both ways', { rows: 2, cols: 3, types: 3, even: true }],
    ['2 × 3, costs by direction', { rows: 2, cols: 3, types: 4 }],
    ['3 × 3, costs the same both ways', { rows: 3, cols: 3, types: 3, even: true }],
    ['3 × 3 of two roles', { rows: 3, cols: 3, types: 4, roles: 2 }],
    ['2 × 4, many garments of a piece or two', { rows: 2, cols: 4, types: 6, even: true }],
    ['1 × 7', { rows: 1, cols: 7, types: 3, even: true }],
  ])('%s: the proven cost is the least', (_, shape) => {
    fc.assert(
      fc.property(instanceOf(shape), ({ instance, at }) => {
        const least = leastOfAll(instance)
        const found = place(instance)
        expect(found.proven).toBe(true)
        expect(found.cost).toBe(least)
        // The proof does not lean on what annealing found: from any placement it comes to the same.
        const board = boardOfGrid(instance)
        const begun = { at: Int32Array.from(at), cost: totalCost(board, at) }
        const proof = prove(board, begun)
        expect(proof.proven).toBe(true)
        expect(proof.cost).toBe(least)
      }),
      { numRuns: 12 },
    )
  })

  // Garments of equal counts and no costs of their own are alike in every way: each may stand for another.
  test.each([
    [2, 3, [2, 2, 2]],
    [3, 3, [3, 3, 3]],
    [3, 3, [2, 2, 2, 3]],
    [3, 3, [5, 2, 2]],
    [3, 3, [1, 1, 1, 1, 1, 1, 1, 1, 1]],
  ])('%i × %i with garments of %j pieces', (rows, cols, counts) => {
    const instance = plainBoard(rows, cols, counts)
    expect(place(instance)).toMatchObject({ proven: true, cost: leastOfAll(instance) })
  })

  test('where a person has fixed some cells, the least of what is left', () => {
    fc.assert(
      fc.property(
        instanceOf({ rows: 3, cols: 3, types: 3, even: true }),
        fc.uniqueArray(fc.nat({ max: 8 }), { maxLength: 4 }),
        ({ instance, at }, cells) => {
          const pinned = cells.map((cell) => ({ cell, type: at[cell]! }))
          const found = place({ ...instance, pinned })
          let least = Number.POSITIVE_INFINITY
          for (const one of placementsWith(instance, pinned)) {
            least = Math.min(least, plainCost(instance, one))
          }
          expect(found.cost).toBe(least)
          expect(pinned.every(({ cell, type }) => found.cells[cell] === type)).toBe(true)
        },
      ),
      { numRuns: 15 },
    )
  })
})

function* placementsWith(
  instance: Parameters<typeof leastOfAll>[0],
  pinned: readonly { cell: number; type: number }[],
) {
  for (const at of everyPlacement(instance)) {
    if (pinned.every(({ cell, type }) => at[cell] === type)) yield at
  }
}

/** Proves without annealing, from the dearest placement there is. */
function provenAlone(instance: Instance): { readonly cost: number; readonly proven: boolean } {
  const pinned = instance.pinned ?? []
  let dearest: { at: Int32Array; cost: number } | null = null
  for (const at of placementsWith(instance, pinned)) {
    const cost = plainCost(instance, at)
    if (!dearest || cost > dearest.cost) dearest = { at: Int32Array.from(at), cost }
  }
  return prove(boardOfGrid(instance), dearest!)
}

const leastWith = (instance: Instance): number =>
  Math.min(
    ...[...placementsWith(instance, instance.pinned ?? [])].map((at) => plainCost(instance, at)),
  )

describe('what is left out as alike loses nothing, the proof alone', () => {
  test.each([
    [2, 3, [1, 2, 3]],
    [3, 3, [1, 4, 4]],
    [3, 3, [4, 4, 1]],
    [3, 3, [2, 5, 2]],
    [2, 4, [1, 3, 4]],
    [3, 3, [3, 3, 3]],
  ])('%i × %i with garments of %j pieces', (rows, cols, counts) => {
    const instance = plainBoard(rows, cols, counts)
    expect(provenAlone(instance)).toMatchObject({ proven: true, cost: leastWith(instance) })
  })

  test.each([
    [[{ cell: 8, type: 0 }]],
    [[{ cell: 4, type: 2 }]],
    [
      [
        { cell: 0, type: 2 },
        { cell: 1, type: 2 },
        { cell: 8, type: 1 },
      ],
    ],
  ])('with cells fixed at %j', (pinned) => {
    const instance = { ...plainBoard(3, 3, [3, 3, 3]), pinned }
    expect(provenAlone(instance)).toMatchObject({ proven: true, cost: leastWith(instance) })
  })

  test('costs the same both ways, roles anyhow, cells fixed anyhow', () => {
    const shape = { rows: 3, cols: 3, types: 4, roles: 2, even: true }
    const pins = fc.uniqueArray(fc.nat({ max: 8 }), { maxLength: 2 })
    fc.assert(
      fc.property(instanceOf(shape), pins, ({ instance, at }, cells) => {
        const pinned = cells.map((cell) => ({ cell, type: at[cell]! }))
        const fixed = { ...instance, pinned }
        expect(provenAlone(fixed)).toMatchObject({ proven: true, cost: leastWith(fixed) })
      }),
      { numRuns: 60 },
    )
  })
})

test('a placement is fair, its cost and its touching pairs are told as they are', () => {
  fc.assert(
    fc.property(instanceOf({ rows: 6, cols: 7, types: 6, roles: 2 }), ({ instance }) => {
      const found = place(instance)
      expect(isFair(instance, found.cells)).toBe(true)
      expect(found.cost).toBe(plainCost(instance, found.cells))
      expect(found.touching).toBe(touchingPairs(boardOfGrid(instance), found.cells))
    }),
    { numRuns: 8 },
  )
})

test('the same seed gives the same placement, without a seed as well', () => {
  const instance = plainBoard(8, 8, [20, 16, 14, 14])
  expect(place(instance)).toEqual(place(instance))
  const { seed: _, ...seedless } = instance
  expect(place(seedless)).toEqual(place(seedless))
  expect(place({ ...instance, seed: 2 }).cells).not.toEqual(place(instance).cells)
  expect(place({ ...instance, seed: -7 })).toEqual(place({ ...instance, seed: -7 }))
})

test('proving never makes it dearer', () => {
  fc.assert(
    fc.property(instanceOf({ rows: 4, cols: 4, types: 4 }), ({ instance }) => {
      const board = boardOfGrid(instance)
      const annealed = search(board, instance.seed!)
      expect(prove(board, annealed).cost).toBeLessThanOrEqual(annealed.cost)
    }),
    { numRuns: 6 },
  )
})

test('a proof that ends before its time says that nothing is proven', () => {
  const instance = plainBoard(5, 5, [7, 6, 6, 6])
  const board = boardOfGrid(instance)
  const { cost, at } = search(board, 1)
  expect(prove(board, { cost, at }, 50)).toMatchObject({ proven: false, cost })
})

/**
 * In a grid of n cells the black cells of a chessboard touch white ones only. Garments of at most half of the
 * cells, rounded up, can be laid without touching themselves: the largest fills black cells alone.
 */
describe('what need not touch does not', () => {
  test.each([
    ['four equal garments', 20, 20, [100, 100, 100, 100]],
    ['one garment of half the cells', 20, 20, [200, 60, 50, 50, 40]],
    ['two halves', 20, 20, [200, 200]],
    ['half of an odd board, rounded up', 9, 11, [50, 20, 15, 14]],
    ['nine garments', 20, 20, [60, 55, 50, 45, 45, 40, 40, 35, 30]],
  ])('%s', (_, rows, cols, counts) => {
    const found = place(plainBoard(rows, cols, counts))
    expect(found.touching).toBe(0)
  })

  test('roles by turns hold pieces of one garment that may lie side by side', () => {
    const [rows, cols] = [9, 11]
    const cells = Array.from({ length: 99 }, (_, i) => (i % 2 === 0 ? 'dark' : 'light'))
    const types = [
      { garment: 'both', role: 'dark', count: 16 },
      { garment: 'dark one', role: 'dark', count: 34 },
      { garment: 'both', role: 'light', count: 15 },
      { garment: 'light one', role: 'light', count: 34 },
    ]
    const adj = types.map(() => types.map(() => 0))
    const found = place({ ...plainBoard(rows, cols, [1]), cells, types, adj })
    expect(isFair({ ...plainBoard(rows, cols, [1]), cells, types, adj }, found.cells)).toBe(true)
    expect(found.touching).toBe(0)
  })

  // One piece more than the black cells has no place left without a neighbour of its own.
  test('more than half of the cells cannot but touch, and touches no more than it must', () => {
    const found = place(plainBoard(4, 4, [9, 7]))
    expect(found.proven).toBe(true)
    expect(found.touching).toBeGreaterThan(0)
    expect(found.touching).toBeLessThanOrEqual(4)
  })

  test.each([
    [20, 20, [200, 100, 100]],
    [5, 5, [13, 6, 6]],
    [7, 6, [14, 14, 14]],
  ])(
    'the chessboard from which one search begins has no touching pairs: %i × %i, %j',
    (rows, cols, counts) => {
      const board = boardOfGrid(plainBoard(rows, cols, counts))
      expect(touchingPairs(board, chequered(board))).toBe(0)
    },
  )
})

describe('boards at the edge', () => {
  test('one cell', () => {
    expect(place(plainBoard(1, 1, [1]))).toEqual({
      cells: [0],
      cost: 0,
      proven: true,
      touching: 0,
    })
  })

  test('one garment everywhere: nothing to choose, and proven', () => {
    expect(place(plainBoard(3, 3, [9]))).toMatchObject({ proven: true, touching: 12 })
    expect(place(plainBoard(9, 9, [81]))).toMatchObject({ proven: true, touching: 144 })
  })

  test('three hundred garments of a piece or two', () => {
    const counts = Array.from({ length: 300 }, (_, n) => (n < 100 ? 2 : 1))
    const instance = plainBoard(20, 20, counts)
    const found = place(instance)
    expect(isFair(instance, found.cells)).toBe(true)
    expect(found).toMatchObject({ cost: 0, proven: true })
  })

  test('twenty-five garments of one piece each, all with costs of their own', () => {
    const one = plainBoard(5, 5, Array<number>(25).fill(1))
    const adj = one.types.map((_, t) => one.types.map((__, u) => ((t * 7 + u * 11) % 23) + 1))
    const found = place({ ...one, adj })
    expect(isFair(one, found.cells)).toBe(true)
    expect(found.touching).toBe(0)
  })

  test('costs that are fractions', () => {
    const one = plainBoard(2, 3, [3, 3])
    const instance = {
      ...one,
      repeat: { '1': 0.1, '2': 0.7 },
      adj: [
        [0.1, 0.2],
        [0.3, 0.4],
      ],
    }
    const found = place(instance)
    expect(found.proven).toBe(true)
    expect(found.cost).toBeCloseTo(leastOfAll(instance), 9)
  })

  test('a cell of every role pinned leaves nothing to move', () => {
    const instance = plainBoard(2, 2, [2, 2])
    const pinned = [0, 0, 1, 1].map((type, cell) => ({ cell, type }))
    expect(place({ ...instance, pinned })).toMatchObject({ cells: [0, 0, 1, 1], proven: true })
  })
})
