import { expect, test } from 'vitest'
import { demand, designOf } from '../../../src/quilt/design.ts'
import { quiltSizes } from '../../../src/quilt/layout.ts'
import { gridOf } from '../../../src/quilt/place/grid.ts'
import { wheresOf } from '../../../src/quilt/place/where.ts'
import { layouts } from '../../help/knowledge.ts'

const designs = layouts.flatMap((layout) =>
  quiltSizes.flatMap((size) => [[], [9, 12]].map((graphics) => designOf(layout, size, graphics))),
)

test('every piece of every layout is found in a block of its own', () => {
  for (const design of designs) {
    const grid = gridOf(design)
    const { columns, rows } = demand(design)
    const wheres = wheresOf(design, grid)
    const within = wheres.flatMap((one) => one ?? [])
    expect(wheres.map((one) => one === null)).toEqual(grid.pieces.map(({ sash }) => sash))
    const names = within.map(({ row, column, nth }) => `${row} ${column} ${nth}`)
    expect(new Set(names).size).toBe(within.length)
    expect(within.every(({ nth, of }) => nth >= 1 && nth <= of)).toBe(true)
    const last = (of: 'row' | 'column') => Math.max(...within.map((one) => one[of]))
    const first = (of: 'row' | 'column') => Math.min(...within.map((one) => one[of]))
    expect([first('row'), first('column'), last('row'), last('column')]).toEqual([
      1,
      1,
      rows,
      columns,
    ])
    expect(new Set(within.map(({ row, column }) => `${row} ${column}`)).size).toBe(columns * rows)
  }
})

test('a piece of a block in parts is found by where the first of them lies', () => {
  const layout = layouts.find(({ id }) => id === 'quartered-nine-patch')!
  const design = designOf(layout, 'crib', [])
  const grid = gridOf(design)
  const wheres = wheresOf(design, grid)
  // Blocks of 13 in, nine pieces each: the second block of the second row begins at 13, 13.
  const at = grid.pieces.findIndex(({ parts: [first] }) => first!.x === 13 && first!.y === 13)
  expect(wheres[at]).toMatchObject({ row: 2, column: 2, of: 9 })
})

test('strips between blocks have no row and no column', () => {
  const layout = layouts.find(({ id }) => id === 'framed-panels')!
  const design = designOf(layout, 'crib', [8])
  const grid = gridOf(design)
  const wheres = wheresOf(design, grid)
  // Two by three panels of 14 in with 2 in between and around: the first begins at 2, 2.
  expect(wheres[0]).toBeNull()
  const panel = grid.pieces.findIndex(
    ({ parts: [first], role }) => role === 'focal' && first!.x >= 18,
  )
  expect(wheres[panel]).toMatchObject({ row: 1, column: 2 })
})
