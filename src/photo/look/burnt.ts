import type { Pixels } from '../cloth.ts'
import type { Mask } from './outline.ts'

/** From these codes on, by the largest of its three channels, a pixel is light, and is cut by the sensor. */
const codes = { light: 240, cut: 254 } as const
/** Burnt out is a photo that is light nearly everywhere, or whose garment is cut for the most part. */
const burnt = { light: 0.5, cut: 0.5 } as const

/** Whether a photo holds so much that is burnt out as one that is too bright must: a white cloth alone is not enough. */
export function isBurnt({ data, width, height, channels }: Pixels, mask: Mask): boolean {
  let [light, garment, cut] = [0, 0, 0]
  for (let y = 0, at = 0; y < height; y += 1) {
    const row = Math.floor((y * mask.height) / height) * mask.width
    for (let x = 0; x < width; x += 1, at += channels) {
      const most = Math.max(data[at]!, data[at + 1]!, data[at + 2]!)
      if (most >= codes.light) light += 1
      if (!mask.data[row + Math.floor((x * mask.width) / width)]) continue
      garment += 1
      if (most >= codes.cut) cut += 1
    }
  }
  return light > burnt.light * width * height || cut > burnt.cut * garment
}
