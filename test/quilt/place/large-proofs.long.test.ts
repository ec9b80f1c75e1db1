import { expect, test } from 'vitest'
import { search } from '../../../src/quilt/place/anneal.ts'
import { boardOfGrid } from '../../../src/quilt/place/board.ts'
import { place } from '../../../src/quilt/place/index.ts'
import { isFair, plainBoard, plainCost } from '../../help/boards.ts'

const by = (t: number, u: number): number => (t * u * 7 + (t + u) * 11) % 31

test.each([
  ['four garments without costs of their own', [7, 6, 6, 6], () => 0],
  ['six alike in number', [5, 4, 4, 4, 4, 4], by],
  ['eight, some of one piece', [6, 5, 4, 3, 3, 2, 1, 1], by],
  ['eleven', [4, 3, 3, 3, 2, 2, 2, 2, 2, 1, 1], by],
])(
  'a board of 5 × 5, %s: proven, and no other beginning finds less',
  (_, counts, cost) => {
    const adj = counts.map((__, t) => counts.map((___, u) => cost(t, u)))
    const instance = { ...plainBoard(5, 5, counts), adj }
    const found = place(instance)
    expect(isFair(instance, found.cells)).toBe(true)
    expect(found).toMatchObject({ proven: true, cost: plainCost(instance, found.cells) })
    for (const seed of [2, 3, 4]) {
      expect(search(boardOfGrid(instance), seed).cost).toBeGreaterThanOrEqual(found.cost)
    }
  },
  120_000,
)
