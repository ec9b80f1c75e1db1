import sharp from 'sharp'
import { expect, test } from 'vitest'
import type { Picture } from '../../../src/photo/words/picture.ts'
import { sharpened } from '../../../src/photo/words/sharpen.ts'

const [width, height] = [96, 55]

/** Dark strokes six pixels wide on a light ground, 60 and 200 of 255. */
const strokes = Buffer.from(
  Array.from({ length: width * height * 3 }, (_, at) => (Math.floor(at / 3) % 16 < 6 ? 60 : 200)),
)

/** The same as another program blurs it (libvips). */
async function blurredBySharp(sigma: number): Promise<Picture> {
  const raw = { width, height, channels: 3 as const }
  const data = await sharp(strokes, { raw }).blur(sigma).raw().toBuffer()
  return { width, height, data }
}

const far = (data: Uint8Array): number =>
  data.reduce((sum, value, at) => sum + Math.abs(value - strokes[at]!), 0) / data.length

test('a blurred picture is nearer to what it was', async () => {
  const blurred = await blurredBySharp(2.25)
  const after = sharpened(blurred)
  expect(after).toMatchObject({ width, height })
  expect(far(after.data)).toBeLessThan(0.75 * far(blurred.data))
})

test.each([0, 1, 255])(
  'an even picture of %s stays as it is, and every value is one of a byte',
  (value) => {
    const even = { width: 20, height: 10, data: new Uint8Array(20 * 10 * 3).fill(value) }
    expect([...sharpened(even).data].every((one) => Math.abs(one - value) <= 1)).toBe(true)
  },
)

test('a picture one pixel wide is one afterwards', () => {
  expect(sharpened({ width: 1, height: 55, data: new Uint8Array(165) }).data).toHaveLength(165)
})
