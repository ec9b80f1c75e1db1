import sharp from 'sharp'
import { Failure } from '../base/failures.ts'
import { photoLimits } from './accept-bytes.ts'
import type { Pixels } from './cloth.ts'
import { pngOfHeic } from './heic.ts'
import { sniff } from './sniff.ts'

/**
 * The picture upright, in sRGB, at most `side` pixels long. See-through parts become white paper; of a moving
 * picture the first frame. Throws `corrupt_image` for one that cannot be read to its end.
 */
export async function decode(bytes: Uint8Array, side: number): Promise<Pixels> {
  try {
    return await read(sniff(bytes) === 'heic' ? await pngOfHeic(bytes, side) : bytes, side)
  } catch (cause) {
    throw new Failure('corrupt_image', {}, { cause })
  }
}

async function read(bytes: Uint8Array, side: number): Promise<Pixels> {
  const { data, info } = await sharp(bytes, {
    failOn: 'error',
    limitInputPixels: photoLimits.pixels,
  })
    .autoOrient()
    .resize(side, side, { fit: 'inside', withoutEnlargement: true })
    .flatten({ background: '#fff' })
    .toColourspace('srgb')
    .raw({ depth: 'uchar' })
    .toBuffer({ resolveWithObject: true })
  return { data, width: info.width, height: info.height, channels: info.channels }
}
