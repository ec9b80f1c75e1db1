import { describe, expect, test } from 'vitest'
import { isTurned, placedPieces } from '../../src/papers/piece-places.ts'
import { designOf } from '../../src/quilt/design.ts'
import { gridOf } from '../../src/quilt/place/grid.ts'
import { layouts } from '../help/knowledge.ts'

const laid = (layout: (typeof layouts)[number]) => {
  const grid = gridOf(designOf(layout, 'crib', []))
  return {
    grid,
    cells: grid.pieces.map((_, n) => n),
    blockIn: layout.blockIn,
    sashIn: layout.sash?.width_in ?? 0,
  }
}

describe.each(layouts.map((layout) => [layout.id, layout] as const))('in %s', (_, layout) => {
  test('every piece has an address of its own', () => {
    const placed = placedPieces([laid(layout)])
    expect(placed.length).toBeGreaterThan(20)
    expect(new Set(placed.map(({ address }) => JSON.stringify(address))).size).toBe(placed.length)
  })

  test('a piece further right or down never has a lower column or row, and none is beyond the quilt', () => {
    const { columns, rows } = layout.sizes.crib
    const one = laid(layout)
    for (const { address, parts } of placedPieces([one])) {
      if (address.in === 'strips') continue
      const [first] = parts
      if (address.in === 'block') {
        const step = one.blockIn + one.sashIn
        // The block that the address names holds the piece's upper left corner.
        const [x, y] = [
          (address.column - 1) * step + one.sashIn,
          (address.row - 1) * step + one.sashIn,
        ]
        expect(first!.x).toBeGreaterThanOrEqual(x)
        expect(first!.x).toBeLessThan(x + one.blockIn)
        expect(first!.y).toBeGreaterThanOrEqual(y)
        expect(first!.y).toBeLessThan(y + one.blockIn)
        expect(address.column).toBeLessThanOrEqual(columns)
        expect(address.row).toBeLessThanOrEqual(rows)
      } else {
        expect(first!.x).toBeCloseTo((address.column - 1) * first!.w, 6)
        expect(first!.y).toBeCloseTo((address.row - 1) * first!.h, 6)
      }
    }
  })
})

test('several quilts are told apart', () => {
  const one = laid(layouts[0]!)
  const placed = placedPieces([one, one])
  expect(new Set(placed.map(({ quilt }) => quilt))).toEqual(new Set([0, 1]))
})

test.each([
  [{ w: 3, h: 9 }, { x: 0, y: 0, w: 8.5, h: 2.5 }, true],
  [{ w: 3, h: 9 }, { x: 0, y: 0, w: 2.5, h: 8.5 }, false],
  [{ w: 6.5, h: 6.5 }, { x: 0, y: 0, w: 6, h: 6 }, false],
])('a piece cut %o that lies as %o is turned: %s', (cut, part, turned) => {
  expect(isTurned({ cut, parts: [part] })).toBe(turned)
})
