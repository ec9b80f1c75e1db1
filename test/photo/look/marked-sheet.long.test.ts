import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Point } from '../../../src/photo/hull.ts'
import type { SheetKind } from '../../../src/photo/look/looked.ts'
import { marksOff, scaleByMarks } from '../../../src/photo/look/marked-sheet.ts'
import { cameraOf } from '../../../src/photo/look/sheet-pose.ts'
import { drawn, type Eye, planeAt, rectangle, type Shape, seenAt } from './sheet-scene.ts'

/** Sizes, mm: Letter by ANSI/ASME Y14.1 (8.5 by 11 inches), A4 by ISO 216, ID-1 by ISO/IEC 7810. */
const paper = { letter: [215.9, 279.4], a4: [210, 297], id1: [85.6, 53.98] } as const

const eye: Eye = {
  width: 1600,
  height: 1200,
  focal: (26 * 2000) / 43.2666,
  away: 1100,
  tilt: 0.14,
}
const camera = cameraOf(eye.width, eye.height, 26)
const middle: Point = [eye.width / 2, eye.height / 2]

const wood = () => [140, 105, 75]
const white = [236, 236, 232]
const shirt: Shape = { corners: rectangle(120, 0, 460, 620), colour: [60, 80, 140], garment: true }
const lying = (kind: SheetKind, turn = 0.2): Point[] =>
  rectangle(-350, 100, paper[kind][0], paper[kind][1], turn)

/** Corners as a person marks them: shares of the picture, each so many px off. */
const marksOf = (corners: readonly Point[], off = 0): Point[] =>
  corners.map((corner, n) => {
    const [x, y] = seenAt(eye, corner)
    return [(x + (n % 2 ? off : -off)) / eye.width, (y + (n > 1 ? off : -off)) / eye.height]
  })

/** No sheet is to be seen here: the marks alone tell. */
const bare = drawn(eye, wood, [shirt]).picture

/** Millimetres of a pixel at the picture's middle, by the scene's own geometry. */
function trueScale(): number {
  const [x, y] = middle
  const ways = [
    [planeAt(eye, x - 0.5, y), planeAt(eye, x + 0.5, y)],
    [planeAt(eye, x, y - 0.5), planeAt(eye, x, y + 0.5)],
  ].map(([a, b]) => [b![0] - a![0], b![1] - a![1]])
  const [[ax, ay], [bx, by]] = ways as [[number, number], [number, number]]
  return Math.sqrt(Math.abs(ax * by - ay * bx))
}

const byMarks = (
  corners: readonly Point[],
  sheet: SheetKind,
  { off = marksOff.fine as number, picture = bare } = {},
) => scaleByMarks(picture, { sheet, corners, off }, camera, middle)

describe.each(['letter', 'a4'] as const)('%s', (kind) => {
  test('marked by hand tells the scale, as sure as it says', () => {
    for (const off of [0, 1, 2]) {
      const told = byMarks(marksOf(lying(kind), off), kind)
      if ('code' in told) throw new Error(told.code)
      expect(told.by).toBe(kind)
      expect(told.errorPct).toBeLessThan(5)
      expect(100 * Math.abs(told.mmPerPx / trueScale() - 1)).toBeLessThan(told.errorPct)
    }
  })

  test('in any order means the same', () => {
    const marks = marksOf(lying(kind), 1)
    const told = byMarks(marks, kind)
    const crossed = byMarks([marks[2]!, marks[0]!, marks[3]!, marks[1]!], kind)
    expect(crossed).toMatchObject({ mmPerPx: (told as { mmPerPx: number }).mmPerPx })
  })

  test('that lies there is measured by its own edges, marked six pixels off', () => {
    const { picture } = drawn(eye, wood, [shirt, { corners: lying(kind), colour: white }])
    const told = byMarks(marksOf(lying(kind), 6), kind, { picture, off: marksOff.coarse })
    if ('code' in told) throw new Error(told.code)
    expect(told.errorPct).toBeLessThan(2)
    expect(100 * Math.abs(told.mmPerPx / trueScale() - 1)).toBeLessThan(1)
    for (const corner of lying(kind)) {
      const [x, y] = seenAt(eye, corner)
      expect(Math.min(...told.corners.map(([u, v]) => Math.hypot(u - x, v - y)))).toBeLessThan(1)
    }
  })

  test('is told from the other by its edges, whatever the person says', () => {
    const { picture } = drawn(eye, wood, [shirt, { corners: lying(kind), colour: white }])
    const other = kind === 'letter' ? 'a4' : 'letter'
    expect(byMarks(marksOf(lying(kind), 2), other, { picture })).toEqual({
      code: 'corners_other_sheet',
      other: kind,
    })
  })

  test('tapped roughly, where no edge is felt, is not measured by', () => {
    expect(byMarks(marksOf(lying(kind), 6), kind, { off: marksOff.coarse })).toEqual({
      code: 'sheet_unsure',
    })
  })
})

/**
 * Seen from straight above, 2 px a millimetre: the scale is 0.5 mm, whatever the camera. By the published sizes of
 * ISO 216 and ISO/IEC 7810 alone.
 */
test.each([
  ['a4', 210, 297],
  ['id1', 85.6, 53.98],
  ['letter', 215.9, 279.4],
] as const)('%s from straight above has the scale of its published size', (kind, wide, tall) => {
  const [x, y] = [500, 300]
  const edges = [
    [x, y],
    [x + 2 * wide, y],
    [x + 2 * wide, y + 2 * tall],
    [x, y + 2 * tall],
  ]
  const marks = edges.map(([u, v]): Point => [u! / eye.width, v! / eye.height])
  const told = byMarks(marks, kind, { off: 0.0002 })
  expect((told as { mmPerPx: number }).mmPerPx).toBeCloseTo(0.5, 2)
})

test('a card is measured by where its edges are felt, and not by marks alone', () => {
  const { picture } = drawn(eye, wood, [shirt, { corners: lying('id1'), colour: [190, 60, 50] }])
  const told = byMarks(marksOf(lying('id1'), 1), 'id1', { picture })
  if ('code' in told) throw new Error(told.code)
  expect(100 * Math.abs(told.mmPerPx / trueScale() - 1)).toBeLessThan(told.errorPct)
  expect(byMarks(marksOf(lying('id1'), 1), 'id1')).toMatchObject({ code: 'sheet_unsure' })
})

test('a card hardly apart from what it lies on is not measured by edges that may be its shadow’s', () => {
  const faint = drawn(eye, wood, [shirt, { corners: lying('id1'), colour: [145, 110, 80] }]).picture
  expect(byMarks(marksOf(lying('id1'), 1), 'id1', { picture: faint })).toEqual({
    code: 'sheet_unsure',
  })
})

describe('is refused', () => {
  const [a, b, c, d] = marksOf(lying('a4')) as [Point, Point, Point, Point]
  const between = ([x, y]: Point, [u, v]: Point): Point => [(x + u) / 2, (y + v) / 2]
  test.each<[string, Point[], string]>([
    ['three corners', [a, b, c], 'corners_incomplete'],
    ['five', [a, b, c, d, a], 'corners_incomplete'],
    ['none', [], 'corners_incomplete'],
    ['the same corner twice', [a, b, c, c], 'corners_no_sheet'],
    ['one place four times', [a, a, a, a], 'corners_no_sheet'],
    ['three in a line', [a, b, between(a, b), c], 'corners_no_sheet'],
    ['four in a line', [a, b, between(a, b), between(a, between(a, b))], 'corners_no_sheet'],
    [
      'one within the others',
      [a, b, c, [(a[0] + b[0] + c[0]) / 3, (a[1] + b[1] + c[1]) / 3]],
      'corners_no_sheet',
    ],
    ['a corner that is no number', [a, b, c, [Number.NaN, 0.5]], 'corners_no_sheet'],
    ['a corner without end', [a, b, c, [Number.POSITIVE_INFINITY, 0.5]], 'corners_no_sheet'],
    [
      'a square',
      [
        [0.1, 0.1],
        [0.3, 0.1],
        [0.3, 0.3667],
        [0.1, 0.3667],
      ],
      'corners_not_that_sheet',
    ],
    [
      'a long strip',
      [
        [0.1, 0.1],
        [0.9, 0.1],
        [0.9, 0.2],
        [0.1, 0.2],
      ],
      'corners_not_that_sheet',
    ],
    [
      'a sheet as large as a nail',
      [
        [0.1, 0.1],
        [0.11, 0.1],
        [0.11, 0.118],
        [0.1, 0.118],
      ],
      'sheet_small',
    ],
  ])('%s', (_, corners, code) => {
    expect(byMarks(corners, 'a4')).toMatchObject({ code })
  })
})

test('wherever paper lies and whatever is marked, a sheet is measured by or a reason is told', () => {
  const within = (min: number, max: number) => fc.double({ min, max, noNaN: true })
  const off = fc.tuple(within(-2, 2), within(-2, 2))
  let [told, asked] = [0, 0]
  const lies = fc.record({
    x: within(-500, 500),
    y: within(-300, 300),
    turn: within(0, 3),
    offs: fc.tuple(off, off, off, off),
    kind: fc.constantFrom('letter' as const, 'a4' as const),
    wild: fc.boolean(),
  })
  fc.assert(
    fc.property(lies, ({ x, y, turn, offs, kind, wild }) => {
      const marks = rectangle(x, y, paper[kind][0], paper[kind][1], turn).map(
        (corner, n): Point => {
          const [u, v] = seenAt(eye, corner)
          const times = wild ? 40 : 1
          return [(u + times * offs[n]![0]) / eye.width, (v + times * offs[n]![1]) / eye.height]
        },
      )
      const found = byMarks(marks, kind)
      asked += wild ? 0 : 1
      if ('code' in found) return
      expect(found.errorPct).toBeLessThanOrEqual(6)
      if (wild) return
      told += 1
      expect(100 * Math.abs(found.mmPerPx / trueScale() - 1)).toBeLessThan(2.5 * found.errorPct)
    }),
    { numRuns: 60, seed: 6 },
  )
  expect(told).toBeGreaterThan(0.6 * asked)
})
