import { expect, test } from 'vitest'
import type { Mask } from '../../../src/photo/look/outline.ts'
import { placeOf } from '../../../src/photo/look/sheet-place.ts'
import { boxAt } from './sheet-scene.ts'

const size = { width: 400, height: 300 }

/** A mask at a quarter of the picture's size that holds the boxes, in px of the picture. */
function maskOf(
  ...boxes: readonly (readonly [x: number, y: number, w: number, h: number])[]
): Mask {
  const [width, height] = [size.width / 4, size.height / 4]
  const data = Uint8Array.from({ length: width * height }, (_, at) => {
    const [x, y] = [(at % width) * 4, Math.floor(at / width) * 4]
    return Number(boxes.some(([u, v, w, h]) => x >= u && x < u + w && y >= v && y < v + h))
  })
  return { width, height, data }
}

const garment = [20, 20, 200, 260] as const
const sheet = boxAt(280, 60, 80, 100)

test('a sheet clear of the garment lies beside it', () => {
  const mask = maskOf(garment)
  expect(placeOf(sheet, mask, size)).toBe('beside')
})

test('a sheet that was outlined with the garment lies with it', () => {
  const mask = maskOf(garment, [220, 100, 60, 30], [280, 60, 80, 100])
  expect(placeOf(sheet, mask, size)).toBe('with')
})

test('what is printed on a garment has the garment around it, at its rim too', () => {
  const mask = maskOf(garment)
  for (const printed of [boxAt(80, 90, 80, 100), boxAt(22, 180, 70, 98), boxAt(100, 170, 80, 105)])
    expect(placeOf(printed, mask, size)).toBe('touched')
})

test('a stripe across a sleeve has the sleeve beyond it on both sides, and is no sheet that lies with the garment', () => {
  const sleeve = [280, 20, 60, 220] as const
  const mask = maskOf(garment, [220, 20, 60, 60], sleeve)
  expect(placeOf(boxAt(280, 120, 60, 44), mask, size)).toBe('touched')
  expect(placeOf(boxAt(280, 196, 60, 44), mask, size)).toBe('with')
})

test('a sheet on which a sleeve lies, at a corner or across, is touched by it', () => {
  for (const sleeve of [[200, 40, 96, 40] as const, [200, 80, 180, 40] as const]) {
    const mask = maskOf(garment, sleeve)
    expect(placeOf(sheet, mask, size)).toBe('touched')
  }
})

test('a sheet that holds all or most of what was outlined lies in its place', () => {
  for (const mask of [
    maskOf([280, 60, 80, 100]),
    maskOf([280, 60, 80, 100], [280, 160, 20, 140]),
    maskOf([280, 80, 40, 60]),
  ])
    expect(placeOf(sheet, mask, size)).toBe('instead')
})

test('a shape that leaves the picture is asked where the picture is', () => {
  const beyond = boxAt(360, -40, 90, 110)
  expect(placeOf(beyond, maskOf(garment), size)).toBe('beside')
})
