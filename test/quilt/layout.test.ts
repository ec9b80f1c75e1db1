import { describe, expect, test } from 'vitest'
import { settings } from '../../src/garment/facts.ts'
import { type Design, demand, designOf, framedPiece } from '../../src/quilt/design.ts'
import {
  graphicFits,
  type Layout,
  type QuiltSize,
  quiltSizes,
  readLayout,
} from '../../src/quilt/layout.ts'
import { layouts, readYaml } from '../help/knowledge.ts'

const byId = new Map(layouts.map((layout) => [layout.id, layout]))
const layout = (id: string): Layout => byId.get(id)!
const plain = (id: string, size: QuiltSize = 'throw'): Design => designOf(layout(id), size, [])

test('the shop has a layout of every setting', () => {
  expect(new Set(layouts.map(({ setting }) => setting))).toEqual(new Set(settings))
})

// The trade's figure: 5 in squares make a 13 in block, and four by five blocks 52 × 65 in.
test('a throw of quartered nine-patch is four by five blocks, 52 × 65 in, nine squares each', () => {
  const { finished, blocks, pieces } = demand(plain('quartered-nine-patch'))
  expect(finished).toEqual({ w: 52, h: 65 })
  expect(blocks).toBe(20)
  expect(pieces).toEqual([
    { size: { w: 5, h: 5 }, role: 'focal', count: 80 },
    { size: { w: 5, h: 5 }, role: 'background', count: 80 },
    { size: { w: 5, h: 5 }, role: 'accent', count: 20 },
  ])
})

test('a framed throw is twelve panels cut 14 1/2 in, their strips and corner squares', () => {
  const { finished, pieces } = demand(plain('framed-panels'))
  expect(finished).toEqual({ w: 50, h: 66 })
  expect(pieces).toEqual([
    { size: { w: 14.5, h: 14.5 }, role: 'focal', count: 12 },
    { size: { w: 2.5, h: 14.5 }, role: 'background', count: 31 },
    { size: { w: 2.5, h: 2.5 }, role: 'accent', count: 20 },
  ])
})

const every = layouts.flatMap((one) => quiltSizes.map((size) => [one.id, size, one] as const))

test.each(every)('%s, %s: the finished pieces cover the quilt exactly', (_, size, one) => {
  const { finished, pieces, blocks, columns, rows } = demand(designOf(one, size, []))
  expect(blocks).toBe(columns * rows)
  const loss = 2 * one.seamIn
  const area = pieces.reduce(
    (sum, { size: cut, count }) => sum + (cut.w - loss) * (cut.h - loss) * count,
    0,
  )
  // Quartering a nine-patch loses two more seams across each block: 3 × 4 1/2 in come to 13 in.
  const quartered = blocks * (13.5 ** 2 - 13 ** 2)
  const lost = one.setting === 'quartered' ? quartered : 0
  expect(area - lost).toBeCloseTo(finished.w * finished.h, 6)
})

// Mattress sizes in inches: four pages of the trade agree (secondary).
test.each<[QuiltSize, number, number]>([
  ['twin', 39, 75],
  ['full', 54, 75],
  ['queen', 60, 80],
])('a %s quilt covers its mattress in every layout, with a drop', (size, w, h) => {
  for (const one of layouts) {
    const { finished } = demand(designOf(one, size, []))
    expect(finished.w).toBeGreaterThan(w + 16)
    expect(finished.h).toBeGreaterThanOrEqual(h + 6)
  }
})

test('larger quilts take more pieces', () => {
  for (const one of layouts) {
    const counts = quiltSizes.map((size) =>
      demand(designOf(one, size, [])).pieces.reduce((sum, { count }) => sum + count, 0),
    )
    expect(counts).toEqual(counts.toSorted((a, b) => a - b))
  }
})

describe('a picture in a framed panel', () => {
  const panel = layout('framed-panels').blocks.panel!
  if (panel.make !== 'framed') throw new Error('the panel is not framed')
  const frame = panel

  // By hand: 3/4 in of air on each side, up to the next whole inch; strips of 1 in and more.
  test.each([
    [9, 11],
    [8.25, 10],
    [8.5, 10],
    [8.75, 11],
    [10.5, 12],
    [10.75, 14],
    [12.5, 14],
    [4, 8],
    [30, 14],
  ])('of %d in is cut to finish at %d in', (graphic, side) => {
    expect(framedPiece(frame, graphic)).toBe(side)
  })

  test('gets strips of new cloth that make it up to 14 in, two short and two long', () => {
    const { pieces, finished } = demand(designOf(layout('framed-panels'), 'throw', [9, 12.5]))
    expect(finished).toEqual({ w: 50, h: 66 })
    expect(pieces).toEqual([
      { size: { w: 14.5, h: 14.5 }, role: 'focal', count: 11 },
      { size: { w: 11.5, h: 11.5 }, role: 'focal', count: 1 },
      { size: { w: 2.5, h: 14.5 }, role: 'background', count: 31 },
      { size: { w: 2, h: 14.5 }, role: 'background', count: 2 },
      { size: { w: 2, h: 11.5 }, role: 'background', count: 2 },
      { size: { w: 2.5, h: 2.5 }, role: 'accent', count: 20 },
    ])
    expect(layout('framed-panels').bought).toEqual(['background', 'accent'])
  })

  test('has no block where there are more pictures than blocks', () => {
    const { set, blocks } = designOf(layout('framed-panels'), 'crib', [5, 6, 7, 8, 9, 10, 10.5, 4])
    expect(set.flat()).toHaveLength(6)
    expect(set.flat().map((name) => blocks[name])).toMatchObject(
      [8, 8, 9, 10, 11, 12].map((piece_in) => ({ piece_in })),
    )
  })
})

describe('mixed columns', () => {
  const panels = (pictures: number, size: QuiltSize = 'throw') => {
    const { set } = designOf(layout('mixed-columns'), size, Array(pictures).fill(9))
    return set.map((row) => row.map((name) => (name === 'panel' ? 'P' : '.')).join(''))
  }
  const count = (rows: readonly string[]) => rows.join('').split('P').length - 1

  // Twenty blocks: at least a quarter, at most three quarters of them are panels.
  test.each([
    [1, 5],
    [5, 5],
    [6, 6],
    [15, 15],
    [16, 15],
    [40, 15],
  ])('with %i pictures have %i panels in a throw', (pictures, expected) => {
    expect(count(panels(pictures))).toBe(expected)
  })

  test('spread them evenly, the same every time', () => {
    expect(panels(5)).toEqual(['..P.', '..P.', '..P.', '..P.', '..P.'])
    expect(panels(9)).toEqual(panels(9))
    for (const pictures of [6, 9, 12]) {
      const each = panels(pictures).map((row) => count([row]))
      expect(Math.max(...each) - Math.min(...each)).toBeLessThanOrEqual(1)
    }
  })
})

test('mixed columns without pictures set whole panels and four-patches by turns', () => {
  expect(plain('mixed-columns').set[0]).toEqual(['panel', 'four', 'panel', 'four'])
})

describe('a graphic', () => {
  test.each([
    ['framed-panels', 12.5, 12.5, true],
    ['framed-panels', 12.75, 8, false],
    ['mixed-columns', 11.5, 4, true],
    ['mixed-columns', 11.75, 4, false],
    ['quartered-nine-patch', 3, 3, false],
  ])('in %s of %d × %d in fits: %s', (id, w, h, fits) => {
    expect(graphicFits(layout(id), { w, h })).toBe(fits)
  })
})

describe('a layout file', () => {
  const squares = readYaml('layouts/plain-squares.yaml') as Record<string, unknown>

  test.each<[string, Record<string, unknown>, RegExp]>([
    [
      'that names a block it does not have',
      { set: [['dark', 'green']] },
      /no block is named green/,
    ],
    [
      'whose blocks differ in size',
      {
        blocks: {
          dark: { make: 'grid', patch_in: 6, roles: [['focal']] },
          light: { make: 'grid', patch_in: 5, roles: [['focal']] },
        },
      },
      /one size/,
    ],
    [
      'whose rows of roles are uneven',
      {
        blocks: {
          dark: { make: 'grid', patch_in: 6, roles: [['focal'], ['focal', 'accent']] },
          light: { make: 'grid', patch_in: 6, roles: [['focal']] },
        },
      },
      /not even/,
    ],
    [
      'that quarters something else than nine squares',
      {
        blocks: {
          dark: { make: 'quartered', cut_in: 5, roles: [['focal']] },
          light: { make: 'quartered', cut_in: 5, roles: [['focal']] },
        },
      },
      /three by three/,
    ],
    ['with a size off the quarter inch', { seam_in: 0.3 }, /seam_in/],
    ['with a key that is not known', { colour: 'blue' }, /colour/],
    [
      'that cuts a role from garments and buys it too',
      { sash: { width_in: 2, role: 'background', corner_role: 'accent' } },
      /background is cut from garments and bought/,
    ],
    [
      'that mixes a block it does not have',
      { mix: { picture: 'dark', other: 'grey', least: 0, most: 1 } },
      /no block is named grey/,
    ],
    [
      'whose least share is above the most',
      { mix: { picture: 'dark', other: 'light', least: 0.8, most: 0.2 } },
      /least share/,
    ],
    [
      'whose framed piece is larger than its block',
      {
        blocks: {
          dark: {
            make: 'framed',
            side_in: 6,
            step_in: 1,
            least_in: 8,
            strip_least_in: 1,
            role: 'focal',
            frame_role: 'accent',
          },
          light: { make: 'grid', patch_in: 6, roles: [['background']] },
        },
      },
      /smaller than its least piece/,
    ],
    ['that lacks a quilt size', { sizes: {} }, /crib/],
  ])('%s is refused by name', (_, change, why) => {
    expect(() => readLayout({ ...squares, ...change })).toThrow(why)
    expect(() => readLayout({ ...squares, ...change })).toThrow(/plain-squares/)
  })

  test.each([null, 7, 'x', []])('%j is no layout', (value) => {
    expect(() => readLayout(value)).toThrow(/flows_invalid/)
  })
})
