import sharp from 'sharp'
import { accept } from '../accept.ts'
import type { Pixels } from '../cloth.ts'
import { decode } from '../decode.ts'
import type { Point } from '../hull.ts'
import { type Base, baseOf } from './base.ts'
import { boxOf } from './box.ts'
import { isBurnt } from './burnt.ts'
import { coloursOf } from './colours.ts'
import { fitnessBy } from './fitness.ts'
import { fitnessSigns } from './fitness-signs.ts'
import { focalIn } from './focal.ts'
import { type Frame, frameOf, type Straight, straightened } from './frame.ts'
import type { Box, Look } from './looked.ts'
import type { MarkedSheet, NoSheet } from './marked-sheet.ts'
import { measuredByMarks, measuredIn, type Sizes } from './measured.ts'
import { fitnessNets, outlineNets, printNets } from './nets.ts'
import { type Mask, type Outline, outlineOf } from './outline.ts'
import { type LabPlanes, labPlanes } from './planes.ts'
import { type PrintRead, readPrint } from './read-print.ts'
import { paintedOver } from './sheet-out.ts'
import { placeOf } from './sheet-place.ts'
import { cameraOf } from './sheet-pose.ts'
import { waveSigns } from './wave-signs.ts'

/**
 * Longest sides in pixels: of the picture that is looked at, of the one that is outlined, of the garment set upright,
 * of the picture in which a sheet is looked for.
 */
export const sides = { picture: 1000, small: 320, garment: 384, measured: 1600 } as const

/** What a photo shows, and what was found on the way: for those who measure or draw it. */
export interface Seen {
  readonly look: Look
  /** Smaller than the photo. */
  readonly mask: Mask
  /** How likely each of its pixels lies in the garment, 0 to 1. */
  readonly inside: Float32Array
  readonly garment: SeenGarment | null
}

export interface SeenGarment {
  readonly frame: Frame
  readonly straight: Straight
  readonly base: Base
  readonly print: PrintRead
}

export interface Taken {
  /** Focal length in terms of 35 mm film, mm, null where it is not known; without it the photo's own file is asked. */
  readonly focal35?: number | null
}

/**
 * What a photo shows of a garment. Throws what `accept` throws, and `corrupt_image` for a picture that cannot be
 * read to its end.
 */
export async function lookAt(photo: Uint8Array, taken: Taken = {}): Promise<Look> {
  return (await see(photo, taken)).look
}

export async function see(photo: Uint8Array, { focal35 }: Taken = {}): Promise<Seen> {
  const small = await smallOf(photo)
  const seen = seeIn(small)
  const large = await pictured(photo, sides.measured)
  const told = focal35 === undefined ? await focalIn(photo) : focal35
  const camera = cameraOf(large.width, large.height, told)
  const first = measuredIn(large, seen, camera)
  const behind = first.instead && seeIn(small, first.instead)
  const byIt = behind && measuredIn(large, behind, camera).sizes
  if (behind && byIt?.scale) return sized(behind, byIt)
  const again = seenWithout(first.sizes.scale, seen, small)
  return again ? sized(again, measuredIn(large, again, camera).sizes) : sized(seen, first.sizes)
}

const sized = (seen: Seen, sizes: Sizes): Seen => ({ ...seen, look: { ...seen.look, ...sizes } })

/**
 * What a sheet tells of a photo on which a person marked its corners, however fit the photo is; or why nothing is
 * told. Throws what `lookAt` throws.
 */
export async function measureByMarks(
  photo: Uint8Array,
  marked: MarkedSheet,
  { focal35 = null }: Taken = {},
): Promise<Sizes | NoSheet> {
  const small = await smallOf(photo)
  const seen = seeIn(small)
  const large = await pictured(photo, sides.measured)
  const camera = cameraOf(large.width, large.height, focal35)
  const found = measuredByMarks(large, seen, camera, marked)
  const again = 'code' in found ? null : seenWithout(found.scale, seen, small)
  return again ? measuredByMarks(large, again, camera, marked) : found
}

/** A sheet that was outlined is painted over, and the picture looked at once more. */
function seenWithout(scale: Look['scale'], { mask }: Seen, small: Small): Seen | null {
  const place = scale && placeOf(scale.corners, mask, small.upright)
  if (!scale || place === 'beside' || place === 'touched') return null
  const { width, height } = small.upright
  return seeIn(
    small,
    scale.corners.map(([x, y]) => [x / width, y / height]),
  )
}

/** A photo at the sizes at which it is looked at and outlined, and how large it is, upright. */
export interface Small {
  readonly picture: Pixels
  readonly outlined: Pixels
  readonly upright: Upright
}

/** Throws what `lookAt` throws. */
export async function smallOf(photo: Uint8Array): Promise<Small> {
  const { width, height } = await accept(photo)
  const picture = await pictured(photo)
  return { picture, outlined: await smaller(picture), upright: { width, height } }
}

interface Upright {
  readonly width: number
  readonly height: number
}

/** What pixels show, nothing measured; `sheet`: where one lies, in shares of both sides, is no garment. Pure. */
export function seeIn({ picture, outlined, upright }: Small, sheet?: readonly Point[]): Seen {
  const bare = sheet && paintedOver(outlined, sheet)
  const planes = labPlanes(bare?.picture ?? outlined)
  const outline = outlineOf(planes, outlineNets, bare?.sheet)
  const frame = frameOf(outline.mask)
  const signs = fitnessSigns(picture, planes, outline, frame)
  const plain = { burnt: isBurnt(picture, outline.mask), atEdge: reachesEdge(outline.mask) }
  const { problems, empty } = fitnessBy(signs, plain, fitnessNets)
  const garment = frame && !empty ? garmentIn(picture, outline, frame) : null
  return {
    look: {
      ...upright,
      fitness: { ok: problems.length === 0, problems },
      ...toldOf(garment),
      garment: garment && boxOfMask(outline.mask),
      value: shadeOf(lightnessOf(planes, outline.mask.data)),
      scale: null,
      size: null,
    },
    mask: outline.mask,
    inside: outline.inside,
    garment,
  }
}

function garmentIn(
  picture: Pixels,
  { mask }: Outline,
  frame: Frame,
): SeenGarment & { planes: LabPlanes } {
  const straight = straightened(picture, mask, frame, sides.garment)
  const planes = labPlanes(straight.pixels)
  const base = baseOf(planes, straight.mask)
  const waves = waveSigns(picture, mask)
  return { frame, straight, planes, base, print: readPrint({ planes, base, waves }, printNets) }
}

const nothing: Pick<Look, 'print' | 'graphic' | 'colours'> = {
  print: {
    class: 'solid',
    confidence: 0.25,
    scores: { solid: 0.25, single: 0.25, allover: 0.25, 'stripe-check': 0.25 },
  },
  graphic: null,
  colours: [],
}

function toldOf(
  garment: (SeenGarment & { planes: LabPlanes }) | null,
): Pick<Look, 'print' | 'graphic' | 'colours'> {
  if (!garment) return nothing
  const { print, straight, planes, base } = garment
  const { class: name, confidence, scores, picture } = print
  return {
    print: { class: name, confidence, scores },
    graphic: picture && boxOf(picture, straight),
    colours: coloursOf(planes, straight.mask, base),
  }
}

function boxOfMask({ width, height, data }: Mask): Box {
  let [left, top, right, bottom] = [width, height, 0, 0]
  for (let at = 0; at < data.length; at += 1) {
    if (!data[at]) continue
    const x = at % width
    const y = Math.floor(at / width)
    left = Math.min(left, x)
    right = Math.max(right, x + 1)
    top = Math.min(top, y)
    bottom = y + 1
  }
  return { x: left / width, y: top / height, w: (right - left) / width, h: (bottom - top) / height }
}

/** Whether a mask holds any of the outermost pixels. */
const reachesEdge = ({ width, height, data }: Mask): boolean =>
  data.some((one, at) => {
    const [x, y] = [at % width, Math.floor(at / width)]
    return one === 1 && (x === 0 || y === 0 || x === width - 1 || y === height - 1)
  })

function lightnessOf({ l }: LabPlanes, mask: Uint8Array): number {
  let [sum, count] = [0, 0]
  for (let at = 0; at < l.length; at += 1) {
    if (!mask[at]) continue
    sum += l[at]!
    count += 1
  }
  return count === 0 ? 50 : sum / count
}

const light = 68
const dark = 38

const shadeOf = (lightness: number): Look['value'] =>
  lightness >= light ? 'light' : lightness < dark ? 'dark' : 'medium'

/** The picture at the size that is looked at, or another, in three channels. */
export const pictured = async (photo: Uint8Array, side: number = sides.picture): Promise<Pixels> =>
  inColour(await decode(photo, side))

/** Grey pictures come with one channel. */
function inColour({ data, width, height, channels }: Pixels): Pixels {
  if (channels === 3) return { data, width, height, channels }
  const colour = new Uint8Array(width * height * 3)
  for (let at = 0; at < width * height; at += 1)
    colour.fill(data[at * channels]!, at * 3, at * 3 + 3)
  return { data: colour, width, height, channels: 3 }
}

export async function smaller({ data, width, height }: Pixels): Promise<Pixels> {
  const { data: small, info } = await sharp(data, { raw: { width, height, channels: 3 } })
    .resize(sides.small, sides.small, { fit: 'inside' })
    .raw()
    .toBuffer({ resolveWithObject: true })
  return { data: small, width: info.width, height: info.height, channels: 3 }
}
