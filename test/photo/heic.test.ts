import { readFileSync } from 'node:fs'
import { differenceCiede2000, rgb } from 'culori'
import sharp, { type Sharp } from 'sharp'
import { expect, test } from 'vitest'
import { accept } from '../../src/photo/accept.ts'
import { decode } from '../../src/photo/decode.ts'
import { openLane } from '../../src/photo/lane.ts'
import { makeSafe, sides } from '../../src/photo/safe.ts'
import { drawnShirt } from '../help/drawn-shirt.ts'
import {
  codedIn,
  exifOf,
  gridOf,
  heifOf,
  type Item,
  mirrorBox,
  profileBox,
  sizeBox,
  turnBox,
} from '../help/heif.ts'
import { segments } from '../help/pictures.ts'

// Written with `heif-enc -q 80` of Debian 12's libheif-examples 1.15.1 (x265 3.5) from drawings of drawnShirt:
// whole (642 x 482); in four tiles of 320 x 240, which hold 600 x 450; and with its left 40 of 321 pixels cut out.
const file = (name: string) => readFileSync(new URL(name, import.meta.url))
const whole = file('shirt.heic')
const [coded] = codedIn(whole)
const tiles = codedIn(file('shirt-tiles.heic'))

const [width, height] = [642, 482]
const shirt = (...properties: readonly Buffer[]): Item => ({
  ...coded!,
  properties: [...coded!.properties!, sizeBox(width, height), ...properties],
})
const exif: Item = { type: 'Exif', data: exifOf(6), refers: ['cdsc', [1]] }

/** As phones write it: tiles that are hidden, and a grid of them. */
const gridded = (...properties: readonly Buffer[]): Buffer => {
  const size = sizeBox(320, 240)
  const hidden = tiles.map((tile) => ({
    ...tile,
    hidden: true,
    properties: [...tile.properties!, size],
  }))
  const grid: Item = {
    type: 'grid',
    data: gridOf(2, 2, 600, 450),
    properties: [sizeBox(600, 450), ...properties],
    refers: ['dimg', [1, 2, 3, 4]],
  }
  return heifOf([...hidden, grid], { primary: 5 })
}

const apart = differenceCiede2000()
const colour = ([r, g, b]: readonly number[]) =>
  ({ mode: 'rgb', r: r! / 255, g: g! / 255, b: b! / 255 }) as const

/** The mean of CIEDE2000 over a net of pixels. */
async function unlike(
  picture: Uint8Array,
  drawn: Sharp,
): Promise<{ size: number[]; mean: number }> {
  const seen = await decode(picture, sides.full)
  const { data, info } = await drawn.raw().toBuffer({ resolveWithObject: true })
  expect([seen.width, seen.height, seen.channels]).toEqual([info.width, info.height, 3])
  let [sum, count] = [0, 0]
  for (let at = 0; at + 3 <= data.length; at += 3 * 37) {
    sum += apart(
      colour([...seen.data.subarray(at, at + 3)]),
      colour([...data.subarray(at, at + 3)]),
    )
    count += 1
  }
  return { size: [seen.width, seen.height], mean: sum / count }
}

const drawing = async (w = width, h = height) =>
  sharp(await drawnShirt(w, h), { raw: { width: w, height: h, channels: 3 } })

/** Rotated first and mirrored then, as the file's properties come. */
const turned = async (degrees: number, ways: { flop?: true; flip?: true } = {}) => {
  const upright = await (await drawing()).rotate(degrees).png().toBuffer()
  return sharp(upright)
    .flop(ways.flop ?? false)
    .flip(ways.flip ?? false)
}

// Sizes are those that `heif-info` (libheif 1.15.1) tells of these files. Its `heif-convert` gave the same pixels for
// each, but for a mean of 0.11 of 255. Turns and mirrors are those of ISO/IEC 23008-12, 6.5.10 and 6.5.12.
test.each<[string, () => Buffer, () => Promise<Sharp>, number[]]>([
  ['whole', () => whole, drawing, [642, 482]],
  ['of four tiles, cut to size', gridded, () => drawing(600, 450), [600, 450]],
  ['turned left', () => heifOf([shirt(turnBox(1))]), () => turned(270), [482, 642]],
  ['upside down', () => heifOf([shirt(turnBox(2))]), () => turned(180), [642, 482]],
  ['turned right', () => heifOf([shirt(turnBox(3))]), () => turned(90), [482, 642]],
  ['mirrored', () => heifOf([shirt(mirrorBox(1))]), () => turned(0, { flop: true }), [642, 482]],
  [
    'mirrored top and bottom',
    () => heifOf([shirt(mirrorBox(0))]),
    () => turned(0, { flip: true }),
    [642, 482],
  ],
  [
    'turned and then mirrored',
    () => heifOf([shirt(turnBox(1), mirrorBox(1))]),
    () => turned(270, { flop: true }),
    [482, 642],
  ],
  [
    'turned once, though its Exif asks for a turn as well',
    () => heifOf([shirt(turnBox(3)), exif]),
    () => turned(90),
    [482, 642],
  ],
  ['not turned by its Exif alone', () => heifOf([shirt(), exif]), drawing, [642, 482]],
])('a HEIC is seen as it was drawn: %s', async (_, make, drawn, size) => {
  const bytes = make()
  expect(await accept(bytes)).toEqual({ type: 'heic', width: size[0], height: size[1] })
  const { mean, size: seen } = await unlike(bytes, await drawn())
  expect(seen).toEqual(size)
  expect(mean).toBeLessThan(1.5)
})

test('one whose first brand is that of any picture is read too', async () => {
  const bytes = heifOf([shirt()], { brands: ['mif1', 'mif1', 'heic'] })
  expect(await accept(bytes)).toEqual({ type: 'heic', width, height })
  expect((await unlike(bytes, await drawing())).mean).toBeLessThan(1.5)
})

test('where a HEIC is see-through, paper shows', async () => {
  const seen = await decode(file('shirt-cut.heic'), sides.full)
  expect([seen.width, seen.height, seen.channels]).toEqual([321, 263, 3])
  const at = (x: number) => [...seen.data.subarray((130 * 321 + x) * 3, (130 * 321 + x) * 3 + 3)]
  for (const code of at(10)) expect(code).toBeGreaterThan(250)
  const drawn = [...(await drawnShirt(321, 263)).subarray((130 * 321 + 160) * 3).subarray(0, 3)]
  expect(apart(colour(at(160)), colour(drawn))).toBeLessThan(4)
})

test('the colour profile of a phone is heeded', async () => {
  const any = sharp({ create: { width: 2, height: 2, channels: 3, background: '#123' } })
  const { icc } = await sharp(await any.withIccProfile('p3').png().toBuffer()).metadata()
  const seen = await decode(heifOf([shirt(profileBox(icc!))]), sides.full)
  // The floor's code, taken for one of Display P3; culori has its primaries from CSS Color 4.
  const floor = [
    ...(await drawnShirt(width, height)).subarray((450 * width + 40) * 3).subarray(0, 3),
  ]
  const meant = rgb({ ...colour(floor), mode: 'p3' })
  const at = [...seen.data.subarray((450 * width + 40) * 3).subarray(0, 3)]
  expect(apart(colour(at), meant)).toBeLessThan(1)
  expect(apart(colour(floor), meant)).toBeGreaterThan(0.5)
})

test('what is kept of a HEIC is a JPEG like any other, with nothing of its words', async () => {
  const words = 'shirt of Ana Ejemplo <script>'
  const bytes = Buffer.concat([
    heifOf([shirt(), exif, { type: 'Exif', data: Buffer.from(words), refers: ['cdsc', [1]] }]),
    Buffer.from(words),
  ])
  const safe = await makeSafe(bytes)
  expect([safe.width, safe.height]).toEqual([width, height])
  for (const size of ['full', 'view', 'thumb', 'cloth'] as const) {
    const { markers, after } = segments(safe[size])
    expect([markers.includes(0xe1), markers.includes(0xe2), after]).toEqual([false, false, 0])
    expect(Buffer.from(safe[size]).includes('Ana Ejemplo')).toBe(false)
    expect((await sharp(safe[size]).metadata()).format).toBe('jpeg')
  }
})

test('the process that makes photos safe reads it, and others after it', async () => {
  const lane = openLane()
  try {
    const there = await lane.makeSafe(gridded())
    expect(Buffer.compare(there.full, (await makeSafe(gridded())).full)).toBe(0)
    expect(await lane.makeSafe(whole)).toMatchObject({ width, height })
  } finally {
    await lane.close()
  }
})
