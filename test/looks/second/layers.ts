import { boxOf, channelOf, fromSvg, type Raster } from '../raster.ts'
import type { Box } from '../truth.ts'
import type { Garment } from './garment.ts'
import type { Ground } from './grounds.ts'
import type { Plan } from './plan.ts'
import { drawing, placed, type Size } from './svg.ts'

/** What lies over each other in a picture, each as large as the picture. */
export interface Layers {
  /** Four channels. */
  readonly ground: Raster
  /** Four channels, and over the whole picture: the mask cuts the garment out of it. */
  readonly cloth: Raster
  /** One channel: how much of a pixel is garment, 0 to 255. */
  readonly mask: Raster
}

export async function layersOf(plan: Plan, garment: Garment, ground: Ground): Promise<Layers> {
  const bolt = `<rect x="-2" y="-2" width="4" height="4" fill="${plan.colour}"/>`
  return {
    ground: await filledOut(plan, ground.svg),
    cloth: await filledOut(plan, laid(plan, bolt + garment.print + garment.seams)),
    mask: await maskOf(plan, garment),
  }
}

const filledOut = (size: Size, inner: string): Promise<Raster> =>
  fromSvg(drawing(size, inner), size.width, size.height)

/** As the garment lies in the picture. */
const laid = ({ pose: { x, y, turn, scale } }: Plan, inner: string): string =>
  placed(`translate(${x} ${y}) rotate(${turn}) scale(${scale})`, inner)

async function maskOf(plan: Plan, { outline }: Garment): Promise<Raster> {
  const { width, height } = plan
  if (plan.fault === 'no-garment') return { data: new Uint8Array(width * height), width, height }
  return channelOf(await filledOut(plan, laid(plan, `<path d="${outline}" fill="white"/>`)), 3)
}

/** Of 255: a pixel is at least half covered. */
const half = 128

/** The box of the one picture that is printed on a garment, as far as it is seen; null where there is none. */
export async function graphicIn(plan: Plan, garment: Garment, mask: Raster): Promise<Box | null> {
  if (plan.print !== 'single') return null
  const print = await filledOut(plan, laid(plan, garment.print))
  const box = boxOf(cutBy(mask, print), half)
  return (
    box && {
      x: box.left / plan.width,
      y: box.top / plan.height,
      w: (box.right - box.left) / plan.width,
      h: (box.bottom - box.top) / plan.height,
    }
  )
}

/** What lies within a mask of a raster of four channels. */
function cutBy(mask: Raster, { data, width, height }: Raster): Raster {
  const cut = Uint8Array.from(data)
  for (let at = 0; at < mask.data.length; at++)
    cut[at * 4 + 3] = Math.min(cut[at * 4 + 3]!, mask.data[at]!)
  return { data: cut, width, height }
}
