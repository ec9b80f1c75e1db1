import { expect, test } from 'vitest'
import { overlap } from '../../../src/photo/words/missed.ts'
import type { Slab } from '../../../src/photo/words/picture.ts'

const slab = (x: number, y: number, w: number): Slab => ({ x, y, w, h: 20, turn: 0 })

test('a share that stands apart in the row of its name is not what was known', () => {
  expect(overlap(slab(100, 50, 120), slab(300, 50, 40))).toBe(false)
})

test('a line that was found before is known, in whole or in part', () => {
  const known = slab(100, 50, 120)
  expect(overlap(known, known)).toBe(true)
  expect(overlap(known, slab(150, 53, 200))).toBe(true)
})

test('the row below is another line, though their slabs touch', () => {
  expect(overlap(slab(100, 50, 120), slab(100, 66, 120))).toBe(false)
})
