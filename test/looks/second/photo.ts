import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import sharp from 'sharp'
import { boxOf, channelOf, fromSvg, type Raster } from '../raster.ts'
import type { Box, Truth } from '../truth.ts'
import { type Chance, chanceOf } from './chance.ts'
import { anyColour } from './colours.ts'
import { develop, expose, type Layers } from './develop.ts'
import { type Ground, groundOf } from './grounds.ts'
import { lightOn } from './light.ts'
import { type Plan, planOf } from './plan.ts'
import { printOf } from './prints.ts'
import { seamsOf } from './seams.ts'
import { type Kind, outlineOf } from './shapes.ts'
import { drawing, placed, type Size } from './svg.ts'

/**
 * What training asks of a photo's truth. `kind` and `print` are told of a photo without a garment too: of the
 * one that was left out.
 */
export type SecondTruth = Pick<
  Truth,
  'file' | 'mask' | 'width' | 'height' | 'fault' | 'print' | 'graphic'
> & { readonly kind: Kind; readonly sheet: null }

export interface Photo {
  readonly truth: SecondTruth
  readonly jpeg: Buffer
  /** PNG of the picture's size: white is garment. */
  readonly mask: Buffer
}

/** One photo of a set: the same for the same seed and number. */
export async function drawPhoto(seed: number, number: number): Promise<Photo> {
  const chance = chanceOf(seed, number)
  const plan = planOf(chance)
  const garment = garmentOf(chance, plan)
  const ground = groundOf(chance, plan)
  const layers = await layersOf(plan, garment, ground)
  const light = await lightOn(chance, layers.mask, ground.rough, plan.fault)
  const codes = expose(chance, layers, light)
  return {
    truth: truthOf(plan, number, await graphicIn(plan, garment, layers.mask)),
    jpeg: await develop(chance, codes, plan, plan.fault),
    mask: await pngOf(layers.mask),
  }
}

/** Writes a photo, its mask and its truth into a folder. */
export function keepPhoto(folder: string, { truth, jpeg, mask }: Photo): void {
  writeFileSync(join(folder, truth.file), jpeg)
  writeFileSync(join(folder, truth.mask), mask)
  writeFileSync(join(folder, truth.file.replace(/jpg$/, 'json')), JSON.stringify(truth))
}

/** The data of an outline's path and SVG for what is on it, in parts of the garment about its middle. */
interface Garment {
  readonly outline: string
  readonly print: string
  readonly seams: string
}

function garmentOf(chance: Chance, { kind, print }: Plan): Garment {
  const outline = outlineOf(chance, kind)
  const inks = Array.from({ length: chance.whole(1, 4) }, () => anyColour(chance))
  return { outline, print: printOf(chance, print, kind, inks), seams: seamsOf(chance, kind) }
}

const filledOut = async (size: Size, inner: string): Promise<Raster> =>
  await fromSvg(drawing(size, inner), size.width, size.height)

/** As it lies in the picture. */
const laid = ({ pose: { x, y, turn, scale } }: Plan, inner: string): string =>
  placed(`translate(${x} ${y}) rotate(${turn}) scale(${scale})`, inner)

/** Cloth is drawn over the whole picture, for the mask cuts the garment out of it. */
async function layersOf(plan: Plan, garment: Garment, ground: Ground): Promise<Layers> {
  const bolt = `<rect x="-2" y="-2" width="4" height="4" fill="${plan.colour}"/>`
  return {
    ground: await filledOut(plan, ground.svg),
    cloth: await filledOut(plan, laid(plan, bolt + garment.print + garment.seams)),
    mask: await maskOf(plan, garment),
  }
}

async function maskOf(plan: Plan, { outline }: Garment): Promise<Raster> {
  const { width, height } = plan
  if (plan.fault === 'no-garment') return { data: new Uint8Array(width * height), width, height }
  return channelOf(await filledOut(plan, laid(plan, `<path d="${outline}" fill="white"/>`)), 3)
}

/** The box of what is at least half print and half garment; null where there is no single picture. */
async function graphicIn(plan: Plan, { print }: Garment, mask: Raster): Promise<Box | null> {
  if (plan.print !== 'single') return null
  const printed = await filledOut(plan, laid(plan, print))
  for (let at = 0; at < mask.data.length; at++)
    printed.data[at * 4 + 3] = Math.min(printed.data[at * 4 + 3]!, mask.data[at]!)
  const box = boxOf(printed, 128)
  return (
    box && {
      x: box.left / plan.width,
      y: box.top / plan.height,
      w: (box.right - box.left) / plan.width,
      h: (box.bottom - box.top) / plan.height,
    }
  )
}

const pngOf = async ({ data, width, height }: Raster): Promise<Buffer> =>
  await sharp(data, { raw: { width, height, channels: 1 } })
    .png()
    .toBuffer()

function truthOf(
  { width, height, fault, print, kind }: Plan,
  number: number,
  graphic: Box | null,
): SecondTruth {
  const name = `photo-${String(number).padStart(4, '0')}`
  return {
    file: `${name}.jpg`,
    mask: `${name}.mask.png`,
    width,
    height,
    fault,
    print,
    kind,
    graphic,
    sheet: null,
  }
}
