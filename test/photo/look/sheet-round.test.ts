import { expect, test } from 'vitest'
import type { Mask } from '../../../src/photo/look/outline.ts'
import type { LabPlanes } from '../../../src/photo/look/planes.ts'
import { alikeAround } from '../../../src/photo/look/sheet-round.ts'
import { boxAt } from './sheet-scene.ts'

const [width, height] = [240, 180]
type Lightness = (x: number, y: number) => number

/** A grey picture of that lightness at each pixel. */
function planesOf(lightness: Lightness): LabPlanes {
  const l = Float32Array.from({ length: width * height }, (_, at) =>
    lightness(at % width, Math.floor(at / width)),
  )
  return { width, height, l, a: new Float32Array(l.length), b: new Float32Array(l.length) }
}

/** Left of that column lies the garment, in a mask of half the picture's size. */
const garmentTo = (column: number): Mask => ({
  width: width / 2,
  height: height / 2,
  data: Uint8Array.from({ length: (width * height) / 4 }, (_, at) =>
    Number(2 * (at % (width / 2)) < column),
  ),
})
const none = garmentTo(0)

/** Fields of that size, every other one light. */
const chequered =
  (size: number): Lightness =>
  (x, y) =>
    (Math.floor(x / size) + Math.floor(y / size)) % 2 === 0 ? 90 : 60
/** Gingham: where light threads cross light ones, dark ones dark, and halfway between the two. */
const gingham =
  (size: number): Lightness =>
  (x, y) =>
    90 - 15 * ((Math.floor(x / size) % 2) + (Math.floor(y / size) % 2))
/** A sheet lies on the ground, with its shadow about it. */
const onto =
  (ground: Lightness, [left, top, wide, high]: readonly [number, number, number, number]) =>
  (x: number, y: number): number => {
    const [u, v] = [x - left, y - top]
    if (u >= 0 && u < wide && v >= 0 && v < high) return 90
    return ground(x, y) - (u >= -2 && u < wide + 2 && v >= -2 && v < high + 2 ? 12 : 0)
  }

const card = [100, 70, 43, 27] as const

test('nothing around a card has its colour, on plain, striped or dark chequered ground', () => {
  for (const ground of [
    () => 60,
    (x: number) => (x % 12 < 6 ? 60 : 40),
    (x: number, y: number) => chequered(20)(x, y) - 25,
  ])
    expect(alikeAround(boxAt(...card), planesOf(onto(ground, card)), none)).toBe(0)
})

test('a field of a check has its like around it, in half of it or a third', () => {
  const field = boxAt(100, 60, 20, 20)
  expect(alikeAround(field, planesOf(chequered(20)), none)).toBeCloseTo(0.5, 1)
  expect(alikeAround(boxAt(120, 80, 20, 20), planesOf(gingham(20)), none)).toBeCloseTo(1 / 3, 1)
})

test('so have two fields together that pass for a card', () => {
  const bricks: Lightness = (x, y) =>
    (Math.floor(x / 40) + Math.floor(y / 20)) % 2 === 0 ? 90 : 60
  expect(alikeAround(boxAt(80, 80, 40, 20), planesOf(bricks), none)).toBeGreaterThan(0.35)
})

test('a garment of the colour of a card beside it is no ground of it', () => {
  const planes = planesOf(onto((x) => (x < 90 ? 90 : 60), card))
  expect(alikeAround(boxAt(...card), planes)).toBeGreaterThan(0.1)
  expect(alikeAround(boxAt(...card), planes, garmentTo(92))).toBe(0)
})

test('a shape that reaches out of the picture is asked as far as it lies there; one that lies outside has nothing', () => {
  const planes = planesOf(chequered(20))
  expect(alikeAround(boxAt(220, 160, 40, 40), planes, none)).toBeGreaterThan(0.2)
  expect(alikeAround(boxAt(900, 900, 40, 40), planes, none)).toBe(0)
})
