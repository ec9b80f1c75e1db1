import sharp from 'sharp'
import { accept } from '../accept.ts'
import type { Pixels } from '../cloth.ts'
import { decode } from '../decode.ts'
import { type Base, baseOf } from './base.ts'
import { boxOf } from './box.ts'
import { coloursOf } from './colours.ts'
import { fitnessBy } from './fitness.ts'
import { fitnessSigns } from './fitness-signs.ts'
import { type Frame, frameOf, type Straight, straightened } from './frame.ts'
import type { Box, Look } from './looked.ts'
import { fitnessNet, outlineNets, printNets } from './nets.ts'
import { type Mask, type Outline, outlineOf } from './outline.ts'
import { type LabPlanes, labPlanes } from './planes.ts'
import { type PrintRead, readPrint } from './read-print.ts'

/** Longest sides in pixels: of the picture that is looked at, of the one that is outlined, of the garment set upright. */
export const sides = { picture: 1000, small: 320, garment: 384 } as const

/** What a photo shows, and what was found on the way: for those who measure or draw it. */
export interface Seen {
  readonly look: Look
  /** Smaller than the photo. */
  readonly mask: Mask
  readonly garment: SeenGarment | null
}

export interface SeenGarment {
  readonly frame: Frame
  readonly straight: Straight
  readonly base: Base
  readonly print: PrintRead
}

/**
 * What a photo shows of a garment. Throws what `accept` throws, and `corrupt_image` for a picture that cannot be
 * read to its end.
 */
export async function lookAt(photo: Uint8Array): Promise<Look> {
  return (await see(photo)).look
}

export async function see(photo: Uint8Array): Promise<Seen> {
  const { width, height } = await accept(photo)
  const picture = await pictured(photo)
  const small = await smaller(picture)
  return seeIn(picture, small, { width, height })
}

/** The same of pixels; `small` is the picture at the size that is outlined. Pure. */
export function seeIn(
  picture: Pixels,
  small: Pixels,
  { width, height }: { readonly width: number; readonly height: number },
): Seen {
  const planes = labPlanes(small)
  const outline = outlineOf(planes, outlineNets)
  const frame = frameOf(outline.mask)
  const signs = fitnessSigns(picture, planes, outline, frame)
  const { problems, empty } = fitnessBy(signs, fitnessNet)
  const garment = frame && !empty ? garmentIn(picture, outline, frame) : null
  return {
    look: {
      width,
      height,
      fitness: { ok: problems.length === 0, problems },
      ...toldOf(garment),
      garment: garment && boxOfMask(outline.mask),
      value: shadeOf(lightnessOf(planes, outline.mask.data)),
    },
    mask: outline.mask,
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
  return { frame, straight, planes, base, print: readPrint(planes, base, printNets) }
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
    graphic: name === 'single' && picture ? boxOf(print.print.groups, picture, straight) : null,
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

/** The picture at the size that is looked at, in three channels. */
export const pictured = async (photo: Uint8Array): Promise<Pixels> =>
  inColour(await decode(photo, sides.picture))

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
