import { expect, test } from 'vitest'
import { cornersOf, type Slab } from '../../../src/photo/words/picture.ts'
import { type Likelihood, slabsIn } from '../../../src/photo/words/slabs.ts'
import { aroundAll, levelled, outside, runOf, within } from '../../../src/photo/words/upright.ts'

/** A map on which just the slabs are likely. */
function mapOf(slabs: readonly Slab[], width = 320, height = 240): Likelihood {
  const data = new Float32Array(width * height)
  for (const { x, y, w, h, turn } of slabs) {
    const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
    for (let row = 0; row < height; row += 1) {
      for (let column = 0; column < width; column += 1) {
        const [dx, dy] = [column + 0.5 - x, row + 0.5 - y]
        const [u, v] = [dx * cos + dy * sin, dy * cos - dx * sin]
        if (Math.abs(u) <= w / 2 && Math.abs(v) <= h / 2) data[row * width + column] = 0.9
      }
    }
  }
  return { width, height, data }
}

const degrees = (turn: number): number => (turn * 180) / Math.PI

test.each([0, 12, -30, 60, 90])('a line turned by %i° is found where it lies', (angle) => {
  const line = { x: 160, y: 120, w: 120, h: 14, turn: (angle * Math.PI) / 180 }
  const [found, ...others] = slabsIn(mapOf([line]))
  expect(others).toEqual([])
  expect(Math.abs(found!.x - line.x)).toBeLessThan(1.5)
  expect(Math.abs(found!.y - line.y)).toBeLessThan(1.5)
  // Half a turn is no other direction.
  const off = Math.abs(degrees(found!.turn) - angle) % 180
  expect(Math.min(off, 180 - off)).toBeLessThan(2)
  // Grown by its area × 1.6 ÷ its girth on each side: 10 pixels here.
  const by = (120 * 14 * 1.6) / (2 * (120 + 14))
  expect(Math.abs(found!.w - line.w - 2 * by)).toBeLessThan(5)
  expect(Math.abs(found!.h - line.h - 2 * by)).toBeLessThan(5)
})

test('specks and what is hardly likely are no lines', () => {
  const speck = { x: 50, y: 50, w: 2, h: 2, turn: 0 }
  const faint = mapOf([{ x: 160, y: 120, w: 120, h: 14, turn: 0 }])
  expect(slabsIn(mapOf([speck]))).toEqual([])
  expect(slabsIn({ ...faint, data: faint.data.map((value) => value / 2) })).toEqual([])
  expect(slabsIn(mapOf([]))).toEqual([])
})

test('the words run as most of their length does', () => {
  const long = (turn: number): Slab => ({ x: 0, y: 0, w: 100, h: 10, turn })
  const square: Slab = { x: 0, y: 0, w: 10, h: 10, turn: 1 }
  expect(degrees(runOf([long(0.1), long(0.1), square, square]))).toBeCloseTo(degrees(0.1))
  // Nearly upright and nearly upside down are hardly different directions.
  const [up, down] = [Math.PI / 2 - 0.02, -Math.PI / 2 + 0.02]
  expect(Math.abs(degrees(runOf([long(up), long(down)])))).toBeCloseTo(90)
})

test('all words lie within what is around them', () => {
  const slabs = [
    { x: 40, y: 30, w: 60, h: 10, turn: 0.3 },
    { x: 90, y: 80, w: 20, h: 12, turn: 0.2 },
  ]
  const around = aroundAll(slabs, 0.25)
  for (const { x, y } of slabs.flatMap((slab) => [...cornersOf(slab)])) {
    const [dx, dy] = [x - around.x, y - around.y]
    const [cos, sin] = [Math.cos(0.25), Math.sin(0.25)]
    expect(Math.abs(dx * cos + dy * sin)).toBeLessThanOrEqual(around.w / 2)
    expect(Math.abs(dy * cos - dx * sin)).toBeLessThanOrEqual(around.h / 2)
  }
})

test('a letter that is higher than long lies level all the same', () => {
  const letter = levelled({ x: 5, y: 5, w: 12, h: 4, turn: Math.PI / 2 - 0.1 })
  expect(letter).toMatchObject({ x: 5, y: 5, w: 4, h: 12 })
  expect(letter.turn).toBeCloseTo(-0.1)
})

test('a slab seen from what was cut out lies in the picture where it was', () => {
  const around = { x: 300, y: 200, w: 240, h: 160, turn: 0.4 }
  const slab = { x: 320, y: 230, w: 60, h: 14, turn: 0.5 }
  // The middle of what was cut out is the middle of its own picture, and its words lie level there.
  expect(within(around, around)).toMatchObject({ x: 120, y: 80, turn: 0 })
  const back = outside(around, within(around, slab))
  for (const side of ['x', 'y', 'w', 'h', 'turn'] as const)
    expect(back[side]).toBeCloseTo(slab[side], 9)
})
