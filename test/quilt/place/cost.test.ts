import fc from 'fast-check'
import { expect, test } from 'vitest'
import { boardOfGrid } from '../../../src/quilt/place/board.ts'
import { swapChange, totalCost, touchingPairs } from '../../../src/quilt/place/cost.ts'
import { changeOfSwap } from '../../../src/quilt/place/index.ts'
import { instanceOf, plainBoard, plainCost } from '../../help/boards.ts'

const some = instanceOf({ rows: 4, cols: 5, types: 4, roles: 2 })

test('the cost is that of every pair of cells, as it is defined', () => {
  fc.assert(
    fc.property(some, ({ instance, at }) => {
      expect(totalCost(boardOfGrid(instance), at)).toBe(plainCost(instance, at))
    }),
  )
})

test('what a change of two cells costs is the difference of the whole costs', () => {
  const cell = fc.nat({ max: 19 })
  fc.assert(
    fc.property(some, cell, cell, ({ instance, at }, a, b) => {
      const changed = at.with(a, at[b]!).with(b, at[a]!)
      const difference = plainCost(instance, changed) - plainCost(instance, at)
      expect(swapChange(boardOfGrid(instance), at, a, b)).toBe(difference)
      expect(changeOfSwap(instance, at, [a, b])).toBe(difference)
    }),
    { numRuns: 500 },
  )
})

test('the left or the upper of two types comes first in the table', () => {
  const instance = {
    ...plainBoard(1, 2, [1, 1]),
    adj: [
      [0, 5],
      [9, 0],
    ],
  }
  expect(totalCost(boardOfGrid(instance), [0, 1])).toBe(5)
  expect(totalCost(boardOfGrid(instance), [1, 0])).toBe(9)
  const upright = { ...instance, rows: 2, cols: 1 }
  expect(totalCost(boardOfGrid(upright), [0, 1])).toBe(5)
})

test('touching pairs share an edge and a garment, whatever their types', () => {
  const board = boardOfGrid({
    ...plainBoard(2, 2, [1, 1, 2]),
    types: [
      { garment: 'one', role: 'any', count: 1 },
      { garment: 'one', role: 'any', count: 1 },
      { garment: 'two', role: 'any', count: 2 },
    ],
  })
  expect(touchingPairs(board, [0, 1, 2, 2])).toBe(2)
  expect(touchingPairs(board, [0, 2, 2, 1])).toBe(0)
})
