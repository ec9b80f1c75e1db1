import { describe, expect, test } from 'vitest'
import type { Pixels } from '../../../src/photo/cloth.ts'
import type { Point } from '../../../src/photo/hull.ts'
import type { Mask } from '../../../src/photo/look/outline.ts'
import { searchedFor } from '../../../src/photo/look/scale.ts'
import { cameraOf } from '../../../src/photo/look/sheet-pose.ts'
import { sizeOf } from '../../../src/photo/look/size.ts'
import { drawn, type Eye, rectangle, rounded, type Shape, seenAt } from './sheet-scene.ts'

/** Sizes, mm: Letter by ANSI/ASME Y14.1, A4 by ISO 216, ID-1 by ISO/IEC 7810. */
const paper = { letter: [215.9, 279.4], a4: [210, 297], id1: [85.6, 53.98] } as const
/** The radius of a card's corners, mm (ISO/IEC 7810). */
const cardRound = 3.18
const inch = 25.4

const eye: Eye = { width: 1200, height: 900, focal: (26 * 1500) / 43.2666, away: 1100, tilt: 0.14 }
/** The same seen in fewer pixels, enough for paper. */
const coarse: Eye = { ...eye, width: 880, height: 660, focal: (eye.focal * 880) / 1200 }

/** A shirt with its sleeves out, 780 mm across and 620 mm long, its middle at 60, 0. */
const shirt = (colour: readonly number[]): Shape => ({
  colour,
  garment: true,
  corners: (
    [
      [-390, -310],
      [390, -310],
      [390, -130],
      [230, -130],
      [230, 310],
      [-230, 310],
      [-230, -130],
      [-390, -130],
    ] as const
  ).map(([x, y]): Point => [x + 100, y]),
})
const blue = [60, 80, 140]
const white = [236, 236, 232]
const wood = ([x, y]: Point) => {
  const grain = 8 * Math.sin(x / 9 + Math.sin(y / 40))
  return [140 + grain, 105 + grain, 75 + grain]
}
/** Where a sheet's sides meet, round corners or not. */
const sidesMeet = (kind: keyof typeof paper, x: number, y: number, turn = 0.2): Point[] =>
  rectangle(x, y, paper[kind][0], paper[kind][1], turn)
const sheet = (
  kind: keyof typeof paper,
  x: number,
  y: number,
  turn = 0.2,
  colour = white,
): Shape => ({
  corners:
    kind === 'id1' ? rounded(x, y, ...paper.id1, turn, cardRound) : sidesMeet(kind, x, y, turn),
  colour: kind === 'id1' && colour === white ? [190, 60, 50] : colour,
})

/** Nothing of the mask is in doubt. */
const lying = (mask: Mask, graphic: readonly Point[] = []) => ({
  mask,
  inside: Float32Array.from(mask.data),
  graphic,
})

const scaleOf = (
  shapes: Shape[],
  ground: (at: Point) => readonly number[] = wood,
  by: Eye = eye,
) => {
  const { picture, mask } = drawn(by, ground, shapes)
  const found = searchedFor(picture, mask, cameraOf(by.width, by.height, 26)).measured
  return { picture, mask, found }
}

describe.each(['letter', 'a4', 'id1'] as const)('beside a shirt, %s', (kind) => {
  const lies: [number, number] = kind === 'id1' ? [-300, 180] : [-350, 100]
  const shape = sheet(kind, ...lies)
  const { picture, mask, found } = scaleOf([shirt(blue), shape])

  test('is found with its corners within half a pixel', () => {
    expect(found?.by).toBe(kind)
    for (const corner of sidesMeet(kind, ...lies)) {
      const [x, y] = seenAt(eye, corner)
      expect(Math.min(...found!.corners.map(([u, v]) => Math.hypot(u - x, v - y)))).toBeLessThan(
        0.5,
      )
    }
  })

  test('tells the shirt’s size within two percent, and how sure that is', () => {
    const size = sizeOf(lying(mask), picture, found!.pose)!
    expect(Math.abs((size.garmentWidthIn * inch) / 780 - 1)).toBeLessThan(0.02)
    expect(Math.abs((size.garmentLengthIn * inch) / 620 - 1)).toBeLessThan(0.02)
    expect(found!.errorPct).toBeGreaterThan(0.1)
    expect(found!.errorPct).toBeLessThan(5)
  })

  test('tells the same in a picture that is turned by a quarter', () => {
    const turned = searchedFor(quarter(picture), quarterMask(mask), cameraOf(900, 1200, 26))
      .measured!
    expect(turned.by).toBe(kind)
    expect(turned.mmPerPx / found!.mmPerPx).toBeCloseTo(1, 2)
    for (const [x, y] of found!.corners) {
      const near = turned.corners.map(([u, v]) => Math.hypot(u - (900 - y), v - x))
      expect(Math.min(...near)).toBeLessThan(0.4)
    }
  })
})

const byPaper = scaleOf([shirt(blue), sheet('a4', -350, 100)], wood, coarse)

test('paper is found in fewer pixels too', () => {
  expect(byPaper.found?.by).toBe('a4')
})

test('beside a shirt in checks as large as a card, the card is found', () => {
  const checks = [-60, 60, 180].flatMap((x) =>
    [-200, -100, 0, 100, 200].map(
      (y): Shape => ({ corners: rectangle(x, y, 84, 54), colour: [210, 190, 60], garment: true }),
    ),
  )
  const { found } = scaleOf([shirt(blue), ...checks, sheet('id1', -300, 180)])
  expect(found?.by).toBe('id1')
  const [x, y] = seenAt(eye, [-300, 180])
  const middle = [0, 1].map((k) => found!.corners.reduce((sum, at) => sum + at[k]! / 4, 0))
  expect(Math.hypot(middle[0]! - x, middle[1]! - y)).toBeLessThan(2)
})

test.each(['letter', 'a4', 'id1'] as const)(
  'a %s sheet that was outlined with a strip of ground in place of the shirt is told, and not measured by',
  (kind) => {
    const lies: [number, number] = kind === 'id1' ? [-300, 180] : [-350, 100]
    const outlined = { ...sheet(kind, ...lies), garment: true }
    const [long, turn] = [paper[kind][1], 0.2]
    const strip = { corners: rectangle(lies[0], lies[1] + long, 12, long, turn), colour: blue }
    const { picture } = drawn(eye, wood, [shirt(blue), outlined])
    const { mask } = drawn(eye, wood, [outlined, { ...strip, garment: true }])
    const { measured, instead } = searchedFor(picture, mask, cameraOf(eye.width, eye.height, 26))
    expect(measured).toBeNull()
    for (const corner of sidesMeet(kind, ...lies)) {
      const [x, y] = seenAt(eye, corner)
      expect(Math.min(...instead!.map(([u, v]) => Math.hypot(u - x, v - y)))).toBeLessThan(0.5)
    }
  },
)

test('of a sheet that lies beside the shirt, none is told to be in its place', () => {
  const { picture, mask } = drawn(eye, wood, [shirt(blue), sheet('a4', -350, 100)])
  const { instead } = searchedFor(picture, mask, cameraOf(eye.width, eye.height, 26))
  expect(instead).toBeNull()
})

describe('nothing is measured', () => {
  const frame: Shape[] = [
    { corners: rectangle(-350, 60, 260, 340), colour: [90, 60, 30] },
    { corners: rectangle(-350, 60, 215, 295), colour: [120, 150, 90] },
  ]
  const tiles = ([x, y]: Point) =>
    Math.abs(((x % 210) + 210) % 210) < 5 || Math.abs(((y % 297) + 297) % 297) < 5
      ? [120, 120, 118]
      : [205, 205, 200]
  const red = [190, 60, 50]
  /** Narrow and striped; its last stripe is as large as a card. */
  const sleeve: Shape[] = [
    { corners: rectangle(-350, -220, 140, 86), colour: blue, garment: true },
    { corners: rectangle(-447, -220, 54, 86), colour: red, garment: true },
    { corners: rectangle(-350, -220, 40, 86), colour: red, garment: true },
  ]
  /** Whether a point lies in every other check of a card's proportions, of a cloth that lies a little askew. */
  const inCheck = ([x, y]: Point, wide: number, tall: number): boolean => {
    const [u, v] = [x * 0.9 + y * 0.44, y * 0.9 - x * 0.44]
    return (Math.floor(u / wide) + Math.floor(v / tall)) % 2 !== 0
  }
  const checks = (at: Point) => (inCheck(at, 119, 75) ? [188, 120, 98] : [150, 92, 84])
  /** The same in a corner of the picture, too small there for its fields to be told by their number. */
  const cornerOfChecks = (at: Point) => {
    if (at[0] > -500 || at[1] < 200) return wood(at)
    return inCheck(at, 107, 67.5) ? [196, 222, 210] : [232, 240, 236]
  }
  test.each<[string, Shape[], ((at: Point) => readonly number[])?]>([
    ['without a sheet', [shirt(blue)]],
    [
      'by a white shirt, whatever its proportions',
      [{ corners: rectangle(0, 0, 560, 725), colour: white, garment: true }],
    ],
    ['by a print on the shirt', [shirt(blue), { ...sheet('letter', 100, 0, 0), garment: true }]],
    ['by a cuff as large as a card, of one stripe', [shirt(blue), ...sleeve], wood],
    ['by white paper on white', [shirt(blue), sheet('a4', -350, 100)], () => [236, 236, 232]],
    ['by a picture in a frame', [shirt(blue), ...frame]],
    ['by tiles', [shirt(blue)], tiles],
    ['by a cloth in checks', [shirt(blue)], checks],
    [
      'by a round field beside a band of its own colour',
      [
        shirt(blue),
        sheet('id1', -360, 200),
        { corners: rectangle(-470, 150, 70, 330), colour: red },
      ],
    ],
    ['by a corner of a cloth in checks', [shirt(blue)], cornerOfChecks],
    [
      'by what is as large as a card and has sharp corners, as a printed field has',
      [shirt(blue), { ...sheet('id1', -300, 180), corners: sidesMeet('id1', -300, 180) }],
    ],
    [
      'by a square note',
      [shirt(blue), { corners: rectangle(-350, 100, 210, 210, 0.2), colour: white }],
    ],
    [
      'by half a sheet',
      [shirt(blue), { corners: rectangle(-350, 100, 140, 297, 0.2), colour: white }],
    ],
    [
      'by dark cloth of the size of paper',
      [shirt(blue), sheet('a4', -350, 100, 0.2, [40, 42, 45])],
    ],
    ['by paper that the shirt covers in part', [sheet('a4', -190, 100), shirt(blue)]],
    ['by paper that the picture cuts off', [shirt(blue), sheet('a4', -680, 100)]],
    [
      'by a sheet and a card that contradict each other',
      [
        shirt(blue),
        sheet('a4', -400, 200),
        { colour: [190, 60, 50], corners: rounded(-400, -150, 107, 67.5, 0.1, 4) },
      ],
    ],
  ])('%s', (_, shapes, ground) => {
    expect(scaleOf(shapes, ground, coarse).found).toBeNull()
  })

  test('where there is no garment', () => {
    const { found } = scaleOf([sheet('a4', -350, 100)], wood, coarse)
    expect(found).toBeNull()
  })
})

test('no size is told where the garment has no clear axis, nor where it may end elsewhere', () => {
  const square: Shape = { corners: rectangle(80, 0, 500, 500), colour: blue, garment: true }
  const even = scaleOf([square, sheet('a4', -350, 100)], wood, coarse)
  expect(sizeOf(lying(even.mask), even.picture, even.found!.pose)).toBeNull()

  const { picture, mask, found } = byPaper
  const sure = lying(mask)
  expect(sizeOf(sure, picture, found!.pose)).not.toBeNull()
  const faint = sure.inside.map((one, at) => (at % mask.width > 0.72 * mask.width ? one / 2 : one))
  expect(sizeOf({ ...sure, inside: faint }, picture, found!.pose)).toBeNull()
})

test('two sheets that agree measure as one does', () => {
  const { found } = scaleOf([shirt(blue), sheet('a4', -390, 200), sheet('id1', -390, -150)])
  expect(found).not.toBeNull()
  const alone = scaleOf([shirt(blue), sheet('a4', -390, 200)]).found!
  expect(Math.abs(found!.mmPerPx / alone.mmPerPx - 1)).toBeLessThan(0.03)
})

test('a graphic is as large as it is along the shirt’s own axis', () => {
  const { picture, mask, found } = byPaper
  const rim = rectangle(100, 0, 254, 203.2).map((corner) => {
    const [x, y] = seenAt(coarse, corner)
    return [x / picture.width, y / picture.height] as const
  })
  const size = sizeOf(lying(mask, rim), picture, found!.pose)!
  expect(Math.abs(size.graphicWidthIn! / 10 - 1)).toBeLessThan(0.02)
  expect(Math.abs(size.graphicHeightIn! / 8 - 1)).toBeLessThan(0.02)
})

/** Turned clockwise by a quarter: the point x, y comes to height - y, x. */
function quarter({ data, width, height }: Pixels): Pixels {
  const turned = new Uint8Array(data.length)
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const to = (x * height + height - 1 - y) * 3
      for (let c = 0; c < 3; c += 1) turned[to + c] = data[(y * width + x) * 3 + c]!
    }
  }
  return { data: turned, width: height, height: width, channels: 3 }
}

function quarterMask({ data, width, height }: Mask): Mask {
  const turned = new Uint8Array(data.length)
  for (let at = 0; at < data.length; at += 1)
    turned[(at % width) * height + height - 1 - Math.floor(at / width)] = data[at]!
  return { data: turned, width: height, height: width }
}
