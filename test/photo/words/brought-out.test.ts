import { expect, test } from 'vitest'
import { broughtOut } from '../../../src/photo/words/brought-out.ts'
import type { Picture, Slab } from '../../../src/photo/words/picture.ts'

const [width, height] = [240, 180]

/** Dim strokes on a dim ground, 24 and 36 of 255, in the left half; the right half is even. */
const dim: Picture = {
  width,
  height,
  data: Uint8Array.from({ length: width * height * 3 }, (_, at) => {
    const column = Math.floor(at / 3) % width
    return column < width / 2 && column % 16 < 6 ? 24 : 36
  }),
}

function spread({ data }: Picture): number {
  const sorted = data.toSorted()
  return sorted.at(-1)! - sorted[0]!
}

test('faint strokes stand out more, in greys, on a picture of two thirds the size', async () => {
  const out = await broughtOut(dim, [])
  expect([out.width, out.height]).toEqual([160, 120])
  expect(out.data).toHaveLength(160 * 120 * 3)
  expect(spread(out)).toBeGreaterThan(2 * spread(dim))
  for (let at = 0; at < out.data.length; at += 3)
    expect(new Set(out.data.subarray(at, at + 3)).size).toBe(1)
})

test('of a photo on which something was found, that part alone is looked at', async () => {
  const found: Slab = { x: 60, y: 90, w: 60, h: 20, turn: 0 }
  const { width: wide, height: high } = await broughtOut(dim, [found])
  // 30 pixels are left on each side.
  expect([wide, high]).toEqual([80, 53])
})

test('a single pixel is one afterwards', async () => {
  const one = await broughtOut({ width: 1, height: 1, data: Uint8Array.of(9, 9, 9) }, [])
  expect([one.width, one.height, one.data.length]).toEqual([1, 1, 3])
})
