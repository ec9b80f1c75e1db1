import sharp from 'sharp'
import { cutOut, type Picture, type Slab } from './picture.ts'
import { aroundAll, runOf } from './upright.ts'

/** What is left around the part that is looked at, by its lesser side and at least, pixels. */
const margin = { share: 0.15, least: 30 }
/** Seen smaller by this factor, and blurred by this standard deviation before, pixels of the photo: less grain. */
const grain = { smaller: 2 / 3, blur: 1.5 }
/** Contrast is stretched in tiles, so many across and down, and nowhere so many times as much. */
const tiles = { across: 8, steepest: 3 }

/**
 * The part of a photo where something was found, or all of it, in greys, with its grain taken out and its contrast
 * stretched place by place (libvips' CLAHE).
 */
export async function broughtOut(picture: Picture, found: readonly Slab[]): Promise<Picture> {
  const part = found.length === 0 ? picture : partAround(picture, found)
  const side = (pixels: number) => Math.max(1, Math.round(pixels * grain.smaller))
  const [width, height] = [side(part.width), side(part.height)]
  const tile = (pixels: number) => Math.max(1, Math.round(pixels / tiles.across))
  const grey = await sharp(part.data, {
    raw: { width: part.width, height: part.height, channels: 3 },
  })
    .resize(width, height, { fit: 'fill' })
    .blur(grain.blur * grain.smaller)
    .greyscale()
    .clahe({ width: tile(width), height: tile(height), maxSlope: tiles.steepest })
    .toColourspace('b-w')
    .raw({ depth: 'uchar' })
    .toBuffer()
  const data = new Uint8Array(3 * grey.length)
  for (let at = 0; at < data.length; at += 1) data[at] = grey[Math.floor(at / 3)]!
  return { width, height, data }
}

function partAround(picture: Picture, found: readonly Slab[]): Picture {
  const turn = runOf(found)
  const words = aroundAll(found, turn, 0)
  const wide = Math.max(margin.least, margin.share * Math.min(words.w, words.h))
  const around = aroundAll(found, turn, wide)
  return cutOut(picture, around, Math.round(around.w), Math.round(around.h))
}
