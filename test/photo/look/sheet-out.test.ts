import { expect, test } from 'vitest'
import type { Pixels } from '../../../src/photo/cloth.ts'
import type { Point } from '../../../src/photo/hull.ts'
import { paintedOver } from '../../../src/photo/look/sheet-out.ts'

const [width, height] = [60, 40]
const wood = [140, 105, 75]
const white = [240, 240, 236]
const cloth = [60, 80, 140]

/** A white sheet on wood, cloth along its left side. */
const picture: Pixels = {
  width,
  height,
  channels: 3,
  data: Uint8Array.from({ length: width * height * 3 }, (_, n) => {
    const [x, y] = [Math.floor(n / 3) % width, Math.floor(n / 3 / width)]
    const onSheet = x >= 20 && x < 40 && y >= 10 && y < 30
    return (onSheet ? white : x < 20 ? cloth : wood)[n % 3]!
  }),
}
const corners: Point[] = [
  [20 / width, 10 / height],
  [40 / width, 10 / height],
  [40 / width, 30 / height],
  [20 / width, 30 / height],
]
const at = (data: Uint8Array, x: number, y: number): number[] => [
  ...data.subarray((y * width + x) * 3, (y * width + x) * 3 + 3),
]

test('a sheet is painted over with what most of its surroundings are, whatever touches it', () => {
  const { picture: bare, sheet } = paintedOver(picture, corners)
  for (const [x, y] of [
    [20, 10],
    [30, 20],
    [39, 29],
  ] as const) {
    expect(at(bare.data as Uint8Array, x, y)).toEqual(wood)
    expect(sheet[y * width + x]).toBe(1)
  }
  expect(at(bare.data as Uint8Array, 10, 20)).toEqual(cloth)
  expect(sheet[20 * width + 10]).toBe(0)
})

test('corners in another order mean the same sheet, and the picture that was given stays as it was', () => {
  const before = picture.data.slice()
  const [a, b, c, d] = corners as [Point, Point, Point, Point]
  expect(paintedOver(picture, [c, a, d, b])).toEqual(paintedOver(picture, corners))
  expect(picture.data).toEqual(before)
})

test('of a sheet that lies outside the picture nothing is painted', () => {
  const away = corners.map(([x, y]): Point => [x + 2, y])
  const { picture: bare, sheet } = paintedOver(picture, away)
  expect(bare.data).toEqual(picture.data)
  expect(sheet.every((one) => one === 0)).toBe(true)
})
