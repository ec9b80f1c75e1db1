import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import sharp from 'sharp'
import { beforeAll, expect, test } from 'vitest'
import { openSet } from './open-set.ts'
import { drawPhoto, keepPhoto, type Photo } from './second/photo.ts'

const seed = 11
/** Of that seed's photos one with a single picture and no fault, and one without a garment. */
const printed = 3
const bare = 5

let photos: readonly [one: Photo, again: Photo, empty: Photo]
beforeAll(async () => {
  // At once: what one photo draws must not take from another's chance.
  photos = await Promise.all([
    drawPhoto(seed, printed),
    drawPhoto(seed, printed),
    drawPhoto(seed, bare),
  ])
})

/** Both sides of a photo or mask, px, and the first channel of its pixels. */
async function seen(file: Buffer) {
  const { data, info } = await sharp(file)
    .extractChannel(0)
    .raw()
    .toBuffer({ resolveWithObject: true })
  return { data, width: info.width, height: info.height }
}

test('the same seed and number draw the same photo, byte for byte', () => {
  const [one, again, empty] = photos
  expect(again.truth).toEqual(one.truth)
  expect(again.jpeg.equals(one.jpeg)).toBe(true)
  expect(again.mask.equals(one.mask)).toBe(true)
  expect(empty.jpeg.equals(one.jpeg)).toBe(false)
})

test('photo and mask have the size that the truth tells', async () => {
  for (const { truth, jpeg, mask } of photos)
    for (const { width, height } of [await seen(jpeg), await seen(mask)])
      expect([width, height]).toEqual([truth.width, truth.height])
})

test("the graphic's box lies in the garment", async () => {
  const [{ truth, mask }] = photos
  expect(truth).toMatchObject({ print: 'single', fault: null })
  const { data, width, height } = await seen(mask)
  const covered = (x: number, y: number) => data[y * width + x]! > 127
  const xs: number[] = []
  const ys: number[] = []
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      if (covered(x, y)) {
        xs.push(x)
        ys.push(y)
      }
  const least = (all: readonly number[]) => all.reduce((one, other) => Math.min(one, other))
  const most = (all: readonly number[]) => all.reduce((one, other) => Math.max(one, other))

  const { x, y, w, h } = truth.graphic!
  expect(w * h).toBeGreaterThan(0)
  expect(x * width).toBeGreaterThanOrEqual(least(xs))
  expect((x + w) * width).toBeLessThanOrEqual(most(xs) + 1)
  expect(y * height).toBeGreaterThanOrEqual(least(ys))
  expect((y + h) * height).toBeLessThanOrEqual(most(ys) + 1)
  expect(covered(Math.floor((x + w / 2) * width), Math.floor((y + h / 2) * height))).toBe(true)
})

test('a photo without a garment has an empty mask and no graphic', async () => {
  const [, , { truth, mask }] = photos
  expect(truth).toMatchObject({ fault: 'no-garment', graphic: null })
  const { data } = await seen(mask)
  expect(data.every((value) => value === 0)).toBe(true)
})

test('photos that were kept are read back as a set', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'looks-'))
  try {
    const [one, , empty] = photos
    for (const photo of [one, empty]) keepPhoto(folder, photo)
    const set = openSet(folder)
    expect(set.map(({ truth }) => truth)).toEqual([one.truth, empty.truth])
    const mask = await set[0]!.mask()
    const { data, width, height } = await seen(one.mask)
    expect([mask.width, mask.height]).toEqual([width, height])
    expect(Buffer.from(mask.data).equals(data)).toBe(true)
  } finally {
    rmSync(folder, { recursive: true })
  }
})
