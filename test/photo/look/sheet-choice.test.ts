import { expect, test } from 'vitest'
import type { Point } from '../../../src/photo/hull.ts'
import { posesOf } from '../../../src/photo/look/scale.ts'
import { type Candidate, chosen } from '../../../src/photo/look/sheet-choice.ts'
import { cameraOf } from '../../../src/photo/look/sheet-pose.ts'
import type { Sides } from '../../../src/photo/look/sheet-sides.ts'

/** A shape with its middle there, px, that stands out by so much, codes. */
const shape = (x: number, y: number, w: number, h: number, contrast = 30): Sides => ({
  corners: [
    [x - w / 2, y - h / 2],
    [x + w / 2, y - h / 2],
    [x + w / 2, y + h / 2],
    [x - w / 2, y + h / 2],
  ],
  contrast,
  met: 1,
})

/** A card by ISO/IEC 7810, 2 px for a millimetre, seen from straight above. */
const sides = shape(300, 300, 2 * 85.6, 2 * 53.98)
const [pose] = posesOf(sides.corners, 'id1', cameraOf(1200, 900, 26))
const card: Candidate = { sides, pose: pose!, free: true }
const at: Point = [700, 450]

/** So many fields of a cloth, each of that part of the card's size. */
const fieldsOf = (count: number, part: number, contrast?: number): Sides[] =>
  Array.from({ length: count }, (_, n) =>
    shape(100 + 110 * n, 700, 2 * 85.6 * Math.sqrt(part), 2 * 53.98 * Math.sqrt(part), contrast),
  )

test('a card is chosen, also one that carries a few fields, and one on a cloth whose checks are fainter', () => {
  for (const beside of [[], fieldsOf(3, 0.25), fieldsOf(9, 0.5, 8), fieldsOf(9, 0.1)])
    expect(chosen([card], [sides, ...beside], at)).toBe(card)
})

test.each([
  ['one of many fields', 4, 1],
  ['two fields of a check together', 9, 0.5],
  ['four of them', 9, 0.25],
])('%s is no card', (_, count, part) => {
  expect(chosen([card], [sides, ...fieldsOf(count, part)], at)).toBeNull()
})
