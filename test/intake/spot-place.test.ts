import { expect, test } from 'vitest'
import type { Facts } from '../../src/garment/facts.ts'
import { partSeen, type View } from '../../src/intake/spot-place.ts'

/** A square picture in which the garment fills this box. */
const look = (w: number, h: number) => ({
  width: 1000,
  height: 1000,
  garment: { x: (1 - w) / 2, y: (1 - h) / 2, w, h },
})

// A T-shirt M is 20 in wide and 29 in long laid flat (usual trade figures, from memory, unverified); with its
// sleeves spread it is about as wide as long.
const shirt = look(0.8, 0.8)
const at = (x: number, y: number) => ({ x, y })
const seen = (
  kind: Facts['kind'],
  x: number,
  y: number,
  view: View | null = 'front',
  in_ = shirt,
) => partSeen(at(x, y), in_, view, { kind, size: 'M' })

test.each([
  ['tshirt', 0.5, 0.5, 'front', 'front'],
  ['tshirt', 0.5, 0.5, 'back', 'back'],
  ['tshirt', 0.13, 0.25, 'front', 'right-sleeve'],
  ['tshirt', 0.87, 0.25, 'front', 'left-sleeve'],
  ['tshirt', 0.87, 0.25, 'back', 'right-sleeve'],
  ['tshirt', 0.13, 0.8, 'front', 'front'],
  ['long-sleeve', 0.13, 0.8, 'front', 'right-sleeve'],
  ['button-shirt', 0.4, 0.5, 'front', 'right-front'],
  ['button-shirt', 0.6, 0.5, 'front', 'left-front'],
  ['button-shirt', 0.6, 0.5, 'back', 'back'],
  ['jeans', 0.3, 0.6, 'front', 'right-leg-front'],
  ['jeans', 0.3, 0.6, 'back', 'left-leg-back'],
  ['dress', 0.2, 0.2, 'front', 'front'],
  ['skirt', 0.5, 0.5, 'back', 'back'],
] as const)('on a %s at %f, %f seen from the %s it is the %s', (kind, x, y, view, part) => {
  expect(seen(kind, x, y, view)).toBe(part)
})

test('a garment of one part is that part, whatever its photo shows', () => {
  expect(partSeen(at(0, 0), null, null, { kind: 'blanket', size: 'unknown' })).toBe('cloth')
})

test.each([
  ['beside the garment', () => seen('tshirt', 0.02, 0.5)],
  [
    'where no garment was found',
    () => partSeen(at(0.5, 0.5), null, 'front', { kind: 'tshirt', size: 'M' }),
  ],
  ['where nobody knows the side', () => seen('tshirt', 0.5, 0.5, null)],
  ['on a kind that only looking tells of', () => seen('other', 0.5, 0.5)],
  ['on a tie, whose ends lie as they fall', () => seen('tie', 0.5, 0.5)],
])('nothing is proposed %s', (_, propose) => {
  expect(propose()).toBeNull()
})
