import sharp from 'sharp'
import { expect, test } from 'vitest'
import type { Picture } from '../../../src/photo/words/picture.ts'
import { blurs, sharpened } from '../../../src/photo/words/sharpen.ts'

const [width, height] = [96, 55]

/** Dark strokes so many pixels wide on a light ground, 60 and 200 of 255. */
const strokes = (wide: number): Buffer =>
  Buffer.from(
    Array.from({ length: width * height * 3 }, (_, at) =>
      (Math.floor(at / 3) % width) % (3 * wide) < wide ? 60 : 200,
    ),
  )

/** The same as another program blurs it (libvips). */
async function blurredBySharp(drawn: Buffer, sigma: number): Promise<Picture> {
  const raw = { width, height, channels: 3 as const }
  const data = await sharp(drawn, { raw }).blur(sigma).raw().toBuffer()
  return { width, height, data }
}

// What is blurred more is larger print, and comes back more slowly.
test.each([
  [blurs.usual, 6, 0.75],
  [blurs.strong, 9, 0.9],
])('a picture blurred by %s is nearer to what it was', async (sigma, wide, most) => {
  const drawn = strokes(wide)
  const far = (data: Uint8Array): number =>
    data.reduce((sum, value, at) => sum + Math.abs(value - drawn[at]!), 0) / data.length
  const blurred = await blurredBySharp(drawn, sigma)
  const after = sharpened(blurred, sigma)
  expect(after).toMatchObject({ width, height })
  expect(far(after.data)).toBeLessThan(most * far(blurred.data))
})

test.each([0, 1, 255])(
  'an even picture of %s stays as it is, and every value is one of a byte',
  (value) => {
    const even = { width: 20, height: 10, data: new Uint8Array(20 * 10 * 3).fill(value) }
    expect([...sharpened(even, blurs.usual).data].every((one) => Math.abs(one - value) <= 1)).toBe(
      true,
    )
  },
)

test('a picture one pixel wide is one afterwards', () => {
  const strip = { width: 1, height: 55, data: new Uint8Array(165) }
  expect(sharpened(strip, blurs.strong).data).toHaveLength(165)
})
