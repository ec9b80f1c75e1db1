import { describe, expect, test } from 'vitest'
import { type GarmentCloth, type QuiltInCells, quiltsDrawn } from '../../src/papers/quilt-drawn.ts'
import { designOf } from '../../src/quilt/design.ts'
import type { Layout } from '../../src/quilt/layout.ts'
import { gridOf, type QuiltPiece } from '../../src/quilt/place/grid.ts'
import { layouts } from '../help/knowledge.ts'
import { bought } from '../help/sample-quilt.ts'

const garment = (n: number, more: Partial<GarmentCloth> = {}): GarmentCloth => ({
  garment: n,
  colour: '#5b7ba3',
  second: null,
  print: 'solid',
  photo: null,
  graphicIn: null,
  ...more,
})

const layoutOf = (id: string): Layout => layouts.find((one) => one.id === id)!

/** A crib of that layout; `of` says what lies where. */
function laid(id: string, of: (piece: QuiltPiece, n: number) => number | null): QuiltInCells {
  const { finished, pieces } = gridOf(designOf(layoutOf(id), 'crib', []))
  return { finished, pieces, cells: pieces.map(of) }
}

test('each piece is in the cloth that lies there, and a cloth stands in the list once', () => {
  const quilt = laid('plain-squares', (_, n) => (n % 3 === 2 ? null : 1 + (n % 3)))
  const cloths = [garment(1), garment(2, { colour: '#9c3b36', photo: 'p2' }), garment(3)]
  const [drawn] = quiltsDrawn({ quilts: [quilt], cloths, bought })
  expect(drawn!.pieces.map(({ cloth }) => drawn!.cloths[cloth]!.garment)).toEqual(quilt.cells)
  expect(drawn!.pieces.map(({ parts }) => parts)).toEqual(quilt.pieces.map(({ parts }) => parts))
  const named = drawn!.cloths.map(({ garment, colour }) => `${garment} ${colour}`)
  expect(new Set(named).size).toBe(named.length)
  expect(drawn!.cloths.filter((one) => one.garment === 2)).toEqual([
    {
      garment: 2,
      bought: null,
      colour: '#9c3b36',
      second: null,
      print: 'solid',
      photo: 'p2',
    },
  ])
})

test('bought cloth has the colour of what it does, strips one of their own', () => {
  const quilt = laid('framed-panels', () => null)
  const [drawn] = quiltsDrawn({ quilts: [quilt], cloths: [], bought })
  const colourAt = (n: number) => drawn!.cloths[drawn!.pieces[n]!.cloth]!.colour
  for (const [n, { sash, role }] of quilt.pieces.entries()) {
    expect(colourAt(n)).toBe(bought[sash ? 'sashing' : role])
  }
  expect(drawn!.binding.colour).toBe(bought.binding)
})

test('strips that lie across are turned, squares and standing strips are not', () => {
  const quilt = laid('framed-panels', () => null)
  const [drawn] = quiltsDrawn({ quilts: [quilt], cloths: [], bought })
  for (const { parts, turned } of drawn!.pieces) expect(turned).toBe(parts[0]!.w > parts[0]!.h)
  expect(drawn!.pieces.some(({ turned }) => turned)).toBe(true)
})

describe('the graphic of a garment', () => {
  const single = (more: Partial<GarmentCloth> = {}) => garment(1, { print: 'single', ...more })
  const piecesOf = (
    sides: readonly number[],
    role: QuiltPiece['role'] = 'focal',
  ): QuiltInCells => ({
    finished: { w: 20, h: 20 },
    pieces: sides.map((side, n) => ({
      role,
      cut: { w: side + 0.5, h: side + 0.5 },
      parts: [{ x: n, y: 0, w: side, h: side }],
      sash: false,
    })),
    cells: sides.map(() => 1),
  })
  const graphics = (quilts: readonly QuiltInCells[], more: Partial<GarmentCloth> = {}) =>
    quiltsDrawn({ quilts, cloths: [single(more)], bought }).map(({ pieces }) =>
      pieces.map(({ graphic }) => Number(graphic)).join(''),
    )

  test('is on the smallest focal piece that takes it', () => {
    expect(graphics([piecesOf([14, 6, 11, 11])], { graphicIn: 10 })).toEqual(['0010'])
  })

  test('is on the largest where none takes it, or nobody told how large it is', () => {
    expect(graphics([piecesOf([6, 8, 8])], { graphicIn: 10 })).toEqual(['010'])
    expect(graphics([piecesOf([6, 8, 8])])).toEqual(['010'])
  })

  test('is in one of several quilts', () => {
    expect(graphics([piecesOf([6, 8]), piecesOf([14, 11])], { graphicIn: 10 })).toEqual([
      '00',
      '01',
    ])
  })

  test('is nowhere in pieces of the background, and on no garment that has none', () => {
    expect(graphics([piecesOf([14], 'background')], { graphicIn: 10 })).toEqual(['0'])
    expect(graphics([piecesOf([14])], { print: 'allover' })).toEqual(['0'])
  })
})

test('cells that do not fit the pieces, and a garment without cloth, are refused', () => {
  const quilt = laid('plain-squares', () => 1)
  const draw = (quilts: readonly QuiltInCells[]) => quiltsDrawn({ quilts, cloths: [], bought })
  expect(() => draw([{ ...quilt, cells: [1] }])).toThrow('1 cells for 54 pieces')
  expect(() => draw([quilt])).toThrow('garment 1 has no cloth')
})
