import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import sharp from 'sharp'
import { beforeAll, expect, test } from 'vitest'
import { chanceOf } from '../help/chance.ts'
import { drawPhoto, drawSet, type Photo } from './draw-set.ts'
import { apart, type Lab, labOfCodes } from './light.ts'
import { drawLook, faults, type Look } from './look.ts'
import { openSet } from './open-set.ts'
import { sheetSizes } from './reference.ts'
import { standInArt as art } from './stand-in-art.ts'
import type { Truth } from './truth.ts'

const looks = Array.from({ length: 400 }, (_, number) => drawLook(chanceOf(3, number), number))

const seed = 3
const long = 480

/** The first photo of the set whose look is such. */
const drawn = (wanted: (look: Look) => boolean): Promise<Photo> =>
  drawPhoto(seed, looks.findIndex(wanted), art, { long })

interface Pixels {
  readonly data: Buffer
  readonly width: number
  readonly height: number
}

async function upright({ jpeg }: Photo): Promise<Pixels> {
  const { data, info } = await sharp(jpeg).autoOrient().raw().toBuffer({ resolveWithObject: true })
  return { data, width: info.width, height: info.height }
}

const labAt = ({ data, width }: Pixels, x: number, y: number): Lab => {
  const at = (Math.floor(y) * width + Math.floor(x)) * 3
  return labOfCodes(data[at]!, data[at + 1]!, data[at + 2]!)
}

async function maskOf({ mask }: Photo): Promise<Pixels & { covered: [x: number, y: number][] }> {
  const { data, info } = await sharp(mask)
    .toColourspace('b-w')
    .extractChannel(0)
    .raw()
    .toBuffer({ resolveWithObject: true })
  const covered: [number, number][] = []
  for (let n = 0; n < data.length; n++)
    if (data[n]! > 128) covered.push([n % info.width, Math.floor(n / info.width)])
  return { data, width: info.width, height: info.height, covered }
}

test('each half of a set has as many of each class and of each fault', () => {
  for (const half of [0, 1]) {
    const own = looks.filter((_, number) => number % 2 === half)
    for (const print of ['solid', 'single', 'allover', 'stripe-check'])
      expect(own.filter((look) => look.print === print)).toHaveLength(50)
    for (const fault of faults)
      expect(own.filter((look) => look.fault === fault).length).toBeGreaterThanOrEqual(8)
    expect(own.filter((look) => look.fault === null).length).toBeGreaterThanOrEqual(140)
  }
})

let photo: Photo
beforeAll(async () => {
  photo = await drawn(
    ({ print, fault, sheet, tilt }) =>
      print === 'single' && !fault && sheet?.lies === 'whole' && sheet.kind !== 'id1' && tilt > 14,
  )
})

test('the same seed draws the same photo', async () => {
  const again = await drawPhoto(seed, photo.truth.number, art, { long })
  expect(again.truth).toEqual(photo.truth)
  expect(again.jpeg.equals(photo.jpeg)).toBe(true)
})

test('the photo, shown upright, has the size that its truth tells', async () => {
  const { width, height } = await upright(photo)
  expect([width, height]).toEqual([photo.truth.width, photo.truth.height])
  const mask = await maskOf(photo)
  expect([mask.width, mask.height]).toEqual([Math.floor(width / 4), Math.floor(height / 4)])
})

test("the garment's box is the mask's, and the graphic lies within it", async () => {
  const { covered, width, height } = await maskOf(photo)
  const xs = covered.map(([x]) => x)
  const ys = covered.map(([, y]) => y)
  const { garment, graphic } = photo.truth
  expect(Math.abs(garment!.x * width - Math.min(...xs))).toBeLessThan(1.5)
  expect(Math.abs(garment!.y * height - Math.min(...ys))).toBeLessThan(1.5)
  expect(Math.abs((garment!.x + garment!.w) * width - Math.max(...xs) - 1)).toBeLessThan(1.5)
  expect(Math.abs((garment!.y + garment!.h) * height - Math.max(...ys) - 1)).toBeLessThan(1.5)
  expect(graphic!.x).toBeGreaterThan(garment!.x)
  expect(graphic!.y + graphic!.h).toBeLessThan(garment!.y + garment!.h)
})

test('the cloth has the colour in the photo that its truth tells', async () => {
  const pixels = await upright(photo)
  const { covered } = await maskOf(photo)
  const [told] = photo.truth.colours
  const near = covered.filter(([x, y]) => apart(labAt(pixels, x * 4 + 2, y * 4 + 2), told!.lab) < 8)
  expect(near.length / covered.length).toBeGreaterThan(0.5 * told!.share)
})

/** From mm on the sheet, its upper left corner first, to px. */
function sheetView({ sheet }: Truth): number[] {
  const { wide, tall } = sheetSizes[sheet!.by]
  const onSheet = [
    [0, 0],
    [wide, 0],
    [wide, tall],
    [0, tall],
  ]
  return homography(onSheet, sheet!.corners)
}

test('one camera of the told focal length sees the sheet', () => {
  const { traits, width, height } = photo.truth
  const h = sheetView(photo.truth)
  // Focal lengths are compared by the picture's diagonal, 35 mm film's being that of 36 by 24 mm (CIPA
  // DCG-001, from memory).
  const focal = ((traits.focal35 as number) * Math.hypot(width, height)) / Math.hypot(36, 24)
  // Zhang, "A flexible new technique for camera calibration" (2000), equations 3 and 4: seen through the
  // camera's own matrix, the two axes of a plane stand upright on each other and are of one length.
  const through = ([x, y, z]: readonly [number, number, number]) => [
    (x - (width / 2) * z) / focal,
    (y - (height / 2) * z) / focal,
    z,
  ]
  const a = through([h[0]!, h[3]!, h[6]!])
  const b = through([h[1]!, h[4]!, h[7]!])
  const dot = (v: readonly number[], w: readonly number[]) =>
    v.reduce((sum, part, n) => sum + part * w[n]!, 0)
  expect(Math.abs(dot(a, b)) / dot(a, a)).toBeLessThan(0.0015)
  expect(Math.abs(dot(a, a) / dot(b, b) - 1)).toBeLessThan(0.003)
})

test("the garment, measured by the sheet's corners, has the size that its truth tells", async () => {
  const { truth } = photo
  const h = sheetView(truth)
  const turn = (truth.sheet!.turn * Math.PI) / 180
  const { covered } = await maskOf(photo)
  const placed = covered.map(([x, y]) => {
    const [u, v] = [(x + 0.5) * 4, (y + 0.5) * 4]
    // Two equations for where on the sheet's plane a pixel looks.
    const [a, b, c] = [h[0]! - u * h[6]!, h[1]! - u * h[7]!, u - h[2]!]
    const [d, e, f] = [h[3]! - v * h[6]!, h[4]! - v * h[7]!, v - h[5]!]
    const whole = a * e - b * d
    const [p, q] = [(c * e - b * f) / whole, (a * f - c * d) / whole]
    return [p * Math.cos(turn) - q * Math.sin(turn), p * Math.sin(turn) + q * Math.cos(turn)]
  })
  const reach = (axis: 0 | 1) =>
    Math.max(...placed.map((at) => at[axis]!)) - Math.min(...placed.map((at) => at[axis]!))
  const { garmentWidthIn, garmentLengthIn } = truth.size!
  // A pixel of the mask is about a hundredth of the garment.
  expect(Math.abs(reach(0) / 25.4 / garmentWidthIn - 1)).toBeLessThan(0.025)
  expect(Math.abs(reach(1) / 25.4 / garmentLengthIn - 1)).toBeLessThan(0.025)
})

/** The homography from four points to four others, row by row, its last number 1. */
function homography(
  from: readonly (readonly number[])[],
  to: readonly (readonly number[])[],
): number[] {
  const rows = from.flatMap(([x, y], n) => {
    const [u, v] = to[n] as [number, number]
    return [
      [x!, y!, 1, 0, 0, 0, -u * x!, -u * y!, u],
      [0, 0, 0, x!, y!, 1, -v * x!, -v * y!, v],
    ]
  })
  for (let n = 0; n < 8; n++) {
    const best = rows.slice(n).reduce((a, b) => (Math.abs(b[n]!) > Math.abs(a[n]!) ? b : a))
    rows.splice(rows.indexOf(best), 1)
    rows.splice(n, 0, best)
    for (const [at, row] of rows.entries()) {
      if (at === n) continue
      const by = row[n]! / best[n]!
      for (let c = n; c < 9; c++) row[c]! -= by * best[c]!
    }
  }
  return [...rows.map((row, n) => row[8]! / row[n]!), 1]
}

test('a set that was drawn is read back, whole or by halves', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'looks-'))
  try {
    const truths = await drawSet(folder, seed, 2, art, { told: () => ({ long: 320 }) })
    expect(openSet(folder).map(({ truth }) => truth)).toEqual(truths)
    const [held, ...others] = openSet(folder, 'held')
    expect(others).toEqual([])
    expect(held!.truth).toEqual(truths[1])
    const { data, width, height } = await held!.mask()
    expect(data).toHaveLength(width * height)
    const { x, y, w, h } = held!.truth.garment!
    const share = data.reduce((sum, value) => sum + value / 255, 0) / data.length
    expect(share).toBeLessThan(w * h)
    expect(share).toBeGreaterThan(0.3 * w * h)
    expect(data[Math.floor((y + h / 2) * height) * width + Math.floor((x + w / 2) * width)]).toBe(
      255,
    )
  } finally {
    rmSync(folder, { recursive: true })
  }
})

const brightness = async ({ jpeg }: Photo) => {
  const { channels } = await sharp(jpeg).stats()
  return channels.reduce((sum, { mean }) => sum + mean, 0) / channels.length
}

test('a dark photo is dark and a bright one bright', async () => {
  const [dark, sound, bright] = [
    await brightness(await drawn(({ fault }) => fault === 'dark')),
    await brightness(photo),
    await brightness(await drawn(({ fault }) => fault === 'bright')),
  ]
  expect(dark).toBeLessThan(50)
  expect(sound).toBeGreaterThan(70)
  expect(sound).toBeLessThan(215)
  expect(bright).toBeGreaterThan(215)
})

test('a garment is cut off, small or absent where its truth says so', async () => {
  const onEdge = ({ width, height, covered }: Awaited<ReturnType<typeof maskOf>>) =>
    covered.some(([x, y]) => x === 0 || y === 0 || x === width - 1 || y === height - 1)
  const cut = await drawn(({ fault }) => fault === 'cut-off')
  expect(onEdge(await maskOf(cut))).toBe(true)
  expect(cut.truth.size).toBeNull()
  expect(onEdge(await maskOf(photo))).toBe(false)

  const small = await maskOf(await drawn(({ fault }) => fault === 'too-small'))
  expect(small.covered.length / (small.width * small.height)).toBeLessThan(0.06)
  const none = await drawn(({ fault }) => fault === 'no-garment')
  expect((await maskOf(none)).covered).toHaveLength(0)
  expect(none.truth).toMatchObject({ garment: null, print: null, value: null, colours: [] })
})

test('the focal length stands in the file where the truth says that it does', async () => {
  const told = async (tells: boolean) => {
    const { jpeg, truth } = await drawn((look) => look.tells === tells && look.fault === null)
    const { exif } = await sharp(jpeg).metadata()
    return { truth: Math.round(truth.traits.focal35 as number), found: focalIn(exif!) }
  }
  const { truth, found } = await told(true)
  expect(found).toBe(truth)
  expect((await told(false)).found).toBeNull()
})

/** FocalLengthIn35mmFilm: tag 0xA405, a SHORT, in the Exif IFD that tag 0x8769 points to (Exif 2.32). */
function focalIn(exif: Buffer): number | null {
  const tiff = exif.subarray(6)
  const little = tiff.toString('latin1', 0, 2) === 'II'
  const short = (at: number) => (little ? tiff.readUInt16LE(at) : tiff.readUInt16BE(at))
  const long = (at: number) => (little ? tiff.readUInt32LE(at) : tiff.readUInt32BE(at))
  const find = (directory: number, tag: number): number | null => {
    for (let n = 0; n < short(directory); n++) {
      const entry = directory + 2 + n * 12
      if (short(entry) === tag) return entry + 8
    }
    return null
  }
  const pointer = find(long(4), 0x8769)
  const value = pointer && find(long(pointer), 0xa405)
  return value && short(value)
}
