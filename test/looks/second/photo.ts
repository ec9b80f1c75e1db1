import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import sharp from 'sharp'
import type { Raster } from '../raster.ts'
import type { Box, Truth } from '../truth.ts'
import { chanceOf } from './chance.ts'
import { develop, expose } from './develop.ts'
import { garmentOf } from './garment.ts'
import { groundOf } from './grounds.ts'
import { graphicIn, layersOf } from './layers.ts'
import { lightOn } from './light.ts'
import { type Plan, planOf } from './plan.ts'
import type { Kind } from './shapes.ts'

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
