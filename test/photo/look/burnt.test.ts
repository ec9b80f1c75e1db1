import { expect, test } from 'vitest'
import { isBurnt } from '../../../src/photo/look/burnt.ts'
import { fitnessBy } from '../../../src/photo/look/fitness.ts'
import { faults } from '../../../src/photo/look/looked.ts'

const side = 40

/** A grey picture by its codes: its garment lies in the left quarter. */
function burntBy(code: (x: number) => number): boolean {
  const data = Uint8Array.from({ length: side * side * 3 }, (_, n) =>
    code(Math.floor(n / 3) % side),
  )
  const own = side / 2
  const mask = Uint8Array.from({ length: own * own }, (_, at) => Number(at % own < own / 4))
  return isBurnt(
    { data, width: side, height: side, channels: 3 },
    { width: own, height: own, data: mask },
  )
}

const isGarment = (x: number): boolean => x < side / 4

test('a photo that is light nearly everywhere is burnt out, and one whose garment stands at the last code', () => {
  expect(burntBy((x) => (x < side * 0.6 ? 245 : 90))).toBe(true)
  expect(burntBy((x) => (isGarment(x) ? 255 : 60))).toBe(true)
})

test('a white garment that keeps its threads, and a white sheet beside a garment, are not', () => {
  expect(burntBy((x) => (isGarment(x) ? 250 : 60))).toBe(false)
  expect(burntBy((x) => (isGarment(x) ? 120 : x < side * 0.6 ? 255 : 60))).toBe(false)
})

test('a picture without a garment is burnt out only where it is light', () => {
  const dark = {
    data: new Uint8Array(side * side * 3),
    width: side,
    height: side,
    channels: 3 as const,
  }
  const none = { width: side, height: side, data: new Uint8Array(side * side) }
  expect(isBurnt(dark, none)).toBe(false)
  expect(isBurnt({ ...dark, data: dark.data.map(() => 255) }, none)).toBe(true)
})

test('the nets alone tell no photo too bright, and every other fault', () => {
  const [sound, sure] = [0, 9]
  for (const [n, fault] of faults.entries()) {
    const bias = [sound, ...faults.map((_, other) => (other === n ? sure : sound))]
    const net = { mean: [0], spread: [1], layers: [{ weights: bias.map(() => 0), bias }] }
    const by = (burnt: boolean, atEdge: boolean) =>
      fitnessBy([0], { burnt, atEdge }, [net]).problems
    expect(by(true, false)).toEqual([fault])
    expect(by(false, false)).toEqual(fault === 'bright' ? [] : [fault])
    // What reaches the edge and is taken for no garment may be half of one.
    expect(by(true, true)).toEqual(fault === 'no-garment' ? ['cut-off', fault] : [fault])
  }
})
