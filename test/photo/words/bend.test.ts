import { expect, test } from 'vitest'
import { bendOf, flattened } from '../../../src/photo/words/bend.ts'
import type { Picture } from '../../../src/photo/words/picture.ts'
import type { FoundLine } from '../../../src/photo/words/slabs.ts'

const [width, height] = [800, 600]
const blank: Picture = { width, height, data: new Uint8Array(width * height * 3) }

/** How far a line that lies at `row` in the middle column drops at `x`, by the laws of what bends it. */
type Law = (x: number, row: number) => number

/** A line from `from` to `to` with its middle at `row` in the picture's middle column. */
function lineAt(row: number, from: number, to: number, law: Law): FoundLine {
  const h = 24
  const spine = Array.from({ length: to - from }, (_, n) => ({
    x: from + n + 0.5,
    y: row + law(from + n + 0.5, row),
  }))
  const middle = spine[Math.floor(spine.length / 2)]!
  const rise = (spine.at(-1)!.y - spine[0]!.y) / (to - from)
  return { x: (from + to) / 2, y: middle.y, w: to - from, h, turn: Math.atan(rise), spine }
}

const label = (law: Law): FoundLine[] => [
  lineAt(120, 60, 700, law),
  lineAt(170, 60, 420, law),
  lineAt(220, 300, 740, law),
  lineAt(330, 90, 660, law),
  lineAt(400, 60, 740, law),
  lineAt(470, 60, 500, law),
]

/** Seen from the side, rows that are level meet far away: a pencil of lines through one point. */
const askew: Law = (x, row) => ((row - 300) * (x - width / 2)) / 2600 + 0.04 * (x - width / 2)
/** Around a cylinder seen from a little above, a row is part of an ellipse. */
const curled: Law = (x) => 90 * (Math.sqrt(1 - ((x - width / 2) / 700) ** 2) - 1)
const waved: Law = (x, row) => 22 * Math.sin((x - width / 2) / 230) * (1 + row / 3000)

test.each<[string, Law]>([
  ['askew', askew],
  ['around a cylinder', curled],
  ['in a wave', waved],
])('lines that run %s are known along all their length', (_, law) => {
  const bend = bendOf(label(law), blank)!
  for (const row of [120, 200, 300, 400, 470])
    for (const x of [60, 200, 400, 600, 740])
      expect(Math.abs(bend.drop(x, row) - law(x, row))).toBeLessThan(4)
})

test('a short line is laid flat by what the long ones tell', () => {
  const law: Law = (x, row) => curled(x, row) + askew(x, row)
  const short = lineAt(330, 700, 740, law)
  const bend = bendOf([...label(law), short], blank)!
  expect(Math.abs(short.y - bend.drop(short.x, 330) - 330)).toBeLessThan(5)
})

test('one line that runs unlike all others changes little', () => {
  const odd = lineAt(270, 60, 740, (x) => 0.2 * (x - width / 2))
  const bend = bendOf([...label(curled), odd], blank)!
  for (const x of [60, 400, 740])
    expect(Math.abs(bend.drop(x, 300) - curled(x, 300))).toBeLessThan(5)
})

test('level lines are left alone, and so are few', () => {
  expect(
    bendOf(
      label(() => 0),
      blank,
    ),
  ).toBeNull()
  expect(bendOf(label(curled).slice(0, 2), blank)).toBeNull()
  expect(bendOf([], blank)).toBeNull()
})

test('every line lies within the flat picture, also where it runs far off', () => {
  const steep: Law = (x) => 0.5 * (x - width / 2)
  const corner = lineAt(20, 640, 760, steep)
  const bend = bendOf([...label(steep), corner], blank)!
  expect(bend.top).toBeLessThan(20 - 24 / 2)
  expect(bend.top + bend.height).toBeGreaterThan(470 + 24 / 2)
})

test('strokes along bent lines are level in the flat picture', () => {
  const data = new Uint8Array(width * height * 3).fill(255)
  const rows = [120, 220, 400, 470]
  for (const row of rows)
    for (let x = 0; x < width; x += 1)
      for (const thick of [-1, 0, 1]) {
        const y = Math.round(row + curled(x + 0.5, row) - 0.5) + thick
        if (y >= 0) data.fill(0, (y * width + x) * 3, (y * width + x) * 3 + 3)
      }
  const bend = bendOf(label(curled), blank)!
  const flat = flattened({ width, height, data }, bend)
  expect(flat.width).toBe(width)
  expect(flat.height).toBe(bend.height)
  const darkest = (x: number, row: number): number => {
    const near = Array.from({ length: 31 }, (_, n) => row - bend.top - 15 + n)
    return near.toSorted(
      (a, b) => flat.data[(a * width + x) * 3]! - flat.data[(b * width + x) * 3]!,
    )[0]!
  }
  for (const row of rows) {
    const found = [80, 240, 400, 560, 720].map((x) => darkest(x, row))
    expect(Math.max(...found) - Math.min(...found)).toBeLessThanOrEqual(5)
  }
})
