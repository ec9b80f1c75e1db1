import { describe, expect, test } from 'vitest'
import { demand, designOf } from '../../../src/quilt/design.ts'
import { type Layout, type QuiltSize, quiltSizes } from '../../../src/quilt/layout.ts'
import { boardOfGrid } from '../../../src/quilt/place/board.ts'
import { gridOf, type Rect } from '../../../src/quilt/place/grid.ts'
import { place, placeOn } from '../../../src/quilt/place/index.ts'
import { boardOfPieces, pairsOf } from '../../../src/quilt/place/pieces.ts'
import { layouts } from '../../help/knowledge.ts'

const layout = (id: string): Layout => layouts.find((one) => one.id === id)!
const plain = (id: string, size: QuiltSize) => designOf(layout(id), size, [])
const every = layouts.flatMap((one) => quiltSizes.map((size) => [one.id, size, one] as const))

/** Pictures as they may come: none, few and small, all too large, more than there are blocks. */
const pictures: readonly (readonly [what: string, inches: readonly number[]])[] = [
  ['no pictures', []],
  ['one small picture', [3]],
  ['five pictures', [9, 4.25, 12.5, 10.75, 9]],
  ['pictures larger than any block', [15, 40, 13]],
  ['sixty pictures', Array.from({ length: 60 }, (_, n) => 3 + ((n * 7) % 11))],
]
const followsPictures = ({ mix, blocks }: Layout): boolean =>
  mix !== undefined || Object.values(blocks).some(({ make }) => make === 'framed')
const designs = every.flatMap(([id, size, one]) =>
  pictures
    .slice(0, followsPictures(one) ? pictures.length : 1)
    .map(([what, inches]) => [id, size, what, inches.length, designOf(one, size, inches)] as const),
)

test('a layout that has no place for pictures is set as without them', () => {
  const others = every.filter(([, , one]) => !followsPictures(one))
  expect(others).toHaveLength(10)
  for (const [, size, one] of others) {
    expect(designOf(one, size, [9, 4])).toEqual(designOf(one, size, []))
  }
})

describe.each(designs)('%s, %s, %s', (id, _size, _what, count, design) => {
  const { finished, pieces, grid } = gridOf(design)
  const takes = demand(design)
  const parts = pieces.flatMap((piece) => piece.parts)

  test('the parts cover the quilt: none beyond it, none over another, no gap', () => {
    const end = (rect: Rect) => [rect.x + rect.w, rect.y + rect.h] as const
    for (const part of parts) {
      const isInside =
        Math.min(part.x, part.y) >= 0 && end(part)[0] <= finished.w && end(part)[1] <= finished.h
      if (!isInside) expect(part).toBe('inside')
    }
    const over = parts.some((a, n) =>
      parts
        .slice(n + 1)
        .some((b) => a.x < end(b)[0] && b.x < end(a)[0] && a.y < end(b)[1] && b.y < end(a)[1]),
    )
    expect(over).toBe(false)
    expect(parts.reduce((sum, { w, h }) => sum + w * h, 0)).toBe(finished.w * finished.h)
    expect(finished).toEqual(takes.finished)
  })

  test('there are as many pieces of each role and cut size as the quilt takes', () => {
    const sums = new Map<string, number>()
    for (const { role, cut } of pieces) {
      const key = `${role} ${cut.w} × ${cut.h}`
      sums.set(key, (sums.get(key) ?? 0) + 1)
    }
    const wanted = takes.pieces.map(
      ({ role, size: cut, count: n }) => [`${role} ${cut.w} × ${cut.h}`, n] as const,
    )
    expect(sums).toEqual(new Map(wanted))
  })

  test('a piece is as large as it was cut, less its seams', () => {
    const { seamIn } = design.layout
    for (const { cut, parts: own } of pieces) {
      if (own.length > 1 || id === 'quartered-nine-patch') continue
      const { w, h } = own[0]!
      const as = [Math.min(w, h), Math.max(w, h)].map((side) => side + 2 * seamIn)
      if (as[0] !== cut.w || as[1] !== cut.h) expect(own).toEqual(cut)
    }
    expect(pieces.length).toBeGreaterThan(0)
  })

  test('rows and columns hold the pieces in their order', () => {
    if (!grid) {
      expect(id === 'framed-panels' ? count : 1).toBeGreaterThan(0)
      expect(id).not.toBe('plain-squares')
      return
    }
    expect(grid.cells).toEqual(pieces.map(({ role }) => role))
    pieces.forEach(({ parts: [part] }, i) => {
      const [first, top] = [
        pieces[i % grid.cols]!.parts[0]!,
        pieces[i - (i % grid.cols)]!.parts[0]!,
      ]
      expect([part!.x, part!.w, part!.y, part!.h]).toEqual([first.x, first.w, top.y, top.h])
    })
  })
})

test('plain squares are a grid of their blocks; framed panels of panels, strips and corners', () => {
  expect(gridOf(plain('plain-squares', 'throw')).grid).toMatchObject({ rows: 11, cols: 9 })
  const framed = gridOf(plain('framed-panels', 'throw')).grid!
  expect(framed).toMatchObject({ rows: 9, cols: 7 })
  expect(framed.cells.slice(0, 3)).toEqual(['accent', 'background', 'accent'])
  expect(framed.cells.slice(7, 10)).toEqual(['background', 'focal', 'background'])
})

// The trade's figure: 5 in squares make a 13 in block (secondary).
test('a quartered block of 5 in squares is 13 in: four whole corners, eight halves, four quarters', () => {
  const { pieces } = gridOf(plain('quartered-nine-patch', 'crib'))
  const block = pieces.filter(({ parts: [part] }) => part!.x < 13 && part!.y < 13)
  const sizes = block.flatMap(({ parts }) => parts.map(({ w, h }) => `${w} × ${h}`)).sort()
  const times = (size: string, n: number) => Array<string>(n).fill(size)
  expect(sizes).toEqual([
    ...times('2 × 2', 4),
    ...times('2 × 4.5', 4),
    ...times('4.5 × 2', 4),
    ...times('4.5 × 4.5', 4),
  ])
  expect(block.map(({ parts }) => parts.length).sort()).toEqual([1, 1, 1, 1, 2, 2, 2, 2, 4])
})

test('two quarters are turned: their corner squares meet in the middle of the block', () => {
  const { pieces } = gridOf(plain('quartered-nine-patch', 'crib'))
  const corners = pieces.filter(
    ({ role, parts: [part] }) => role === 'focal' && part!.x < 13 && part!.y < 13,
  )
  expect(corners.map(({ parts: [part] }) => [part!.x, part!.y])).toEqual([
    [0, 0],
    [6.5, 2],
    [2, 6.5],
    [8.5, 8.5],
  ])
})

const repeat = { '1': 100, '2': 30, '4': 12 }

test('by which pieces touch, equal squares are told as by rows and columns', () => {
  const { pieces, grid } = gridOf(plain('plain-squares', 'crib'))
  const types = [
    { garment: 'one', role: 'focal', count: 27 },
    { garment: 'two', role: 'background', count: 27 },
  ]
  const adj = [
    [1, 2],
    [3, 4],
  ]
  const told = (pairs: readonly string[]) => pairs.toSorted()
  const ofPieces = boardOfPieces({ pieces, types, repeat, adj })
  const ofGrid = boardOfGrid({ ...grid!, cells: [...grid!.cells], types, repeat, adj })
  const listed = ({ near, sides, cells }: typeof ofGrid) =>
    Array.from({ length: cells }, (_, i) => [
      told(
        [...near.to.slice(near.from[i], near.from[i + 1])].map(
          (to, k) => `${to} ${near.cost[near.from[i]! + k]}`,
        ),
      ),
      told(
        [...sides.to.slice(sides.from[i], sides.from[i + 1])].map(
          (to, k) => `${to} ${sides.first[sides.from[i]! + k]}`,
        ),
      ),
    ])
  expect(listed(ofPieces)).toEqual(listed(ofGrid))
})

test('a panel beside two patches touches both', () => {
  const { pieces } = gridOf(plain('mixed-columns', 'crib'))
  const touching = pairsOf(pieces, repeat).filter(({ touch }) => touch)
  const panel = pieces.findIndex(({ parts: [part] }) => part!.w === 13)
  const beside = touching.flatMap(({ first, second }) => (first === panel ? [second] : []))
  const sizes = beside.map((n) => pieces[n]!.parts[0]!.w).sort()
  expect(sizes).toEqual([13, 6.5, 6.5])
})

test.each(layouts.map((one) => [one.id, one] as const))(
  '%s: with six garments in every role nothing touches',
  (_, one) => {
    const { pieces } = gridOf(designOf(one, 'throw', []))
    const roles = [...new Set(pieces.map(({ role }) => role))]
    const types = roles.flatMap((role) => {
      const count = pieces.filter((piece) => piece.role === role).length
      return Array.from({ length: 6 }, (_, n) => ({
        garment: n,
        role,
        count: Math.floor((count + n) / 6),
      }))
    })
    const adj = types.map(() => types.map(() => 0))
    const found = placeOn(boardOfPieces({ pieces, types, repeat, adj }))
    expect(found.touching).toBe(0)
    expect(found.cells.every((t, i) => types[t]!.role === pieces[i]!.role)).toBe(true)
  },
)

test('counts that do not fit the pieces are refused', () => {
  const { pieces } = gridOf(plain('plain-squares', 'crib'))
  const types = [{ garment: 'one', role: 'focal', count: 54 }]
  expect(() => boardOfPieces({ pieces, types, repeat, adj: [[0]] })).toThrow('bad_input')
})

test('what a layout gives is what placing takes', () => {
  const { grid } = gridOf(plain('framed-panels', 'crib'))
  const roles = ['focal', 'background', 'accent'] as const
  const types = roles.map((role) => ({
    garment: role,
    role,
    count: grid!.cells.filter((one) => one === role).length,
  }))
  const adj = types.map(() => types.map(() => 1))
  const found = place({ ...grid!, cells: [...grid!.cells], types, repeat, adj })
  expect(found).toMatchObject({ touching: 0, proven: true })
})
