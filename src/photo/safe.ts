import sharp from 'sharp'
import { Failure } from '../base/failures.ts'
import { accept, photoLimits } from './accept.ts'
import { clothIn, type SeenCloth } from './cloth.ts'

/** Longest side in pixels of each picture that is kept. */
export const sides = { full: 3000, view: 1200, thumb: 320 } as const

/** Side in pixels, at most, of the square that shows the cloth alone. */
const clothSide = 192

export type Derived = keyof typeof sides | 'cloth'

/** JPEGs that hold a picture and nothing else; `width` and `height` are those of `full`. */
export type SafePhoto = {
  readonly width: number
  readonly height: number
  readonly seen: SeenCloth
} & Readonly<Record<Derived, Uint8Array>>

/** Cloth is judged by its colour: no subsampling. */
const jpeg = { quality: 88, chromaSubsampling: '4:4:4' } as const

/**
 * The picture upright, in sRGB, without metadata, at most 3000 px long, two smaller ones, and its cloth.
 * Of a moving picture the first frame. Throws what `accept` throws, `corrupt_image` also for a
 * picture that cannot be read to its end.
 */
export async function makeSafe(bytes: Uint8Array): Promise<SafePhoto> {
  await accept(bytes)
  const { data, info } = await decode(bytes)
  const raw = { width: info.width, height: info.height, channels: info.channels }
  const encode = async (side: number) =>
    await sharp(data, { raw })
      .resize(side, side, { fit: 'inside', withoutEnlargement: true })
      .jpeg(jpeg)
      .toBuffer()
  const { square, seen } = clothIn({ data, ...raw })
  return {
    seen,
    width: info.width,
    height: info.height,
    full: await encode(sides.full),
    view: await encode(sides.view),
    thumb: await encode(sides.thumb),
    cloth: await sharp(data, { raw })
      .extract({ left: square.left, top: square.top, width: square.side, height: square.side })
      .resize(clothSide, clothSide, { withoutEnlargement: true })
      .jpeg(jpeg)
      .toBuffer(),
  }
}

/** Decodes once, for all sizes. See-through parts become white paper. */
function decode(bytes: Uint8Array) {
  return sharp(bytes, { failOn: 'error', limitInputPixels: photoLimits.pixels })
    .autoOrient()
    .resize(sides.full, sides.full, { fit: 'inside', withoutEnlargement: true })
    .flatten({ background: '#fff' })
    .toColourspace('srgb')
    .raw({ depth: 'uchar' })
    .toBuffer({ resolveWithObject: true })
    .catch((cause: unknown) => {
      throw new Failure('corrupt_image', {}, { cause })
    })
}
