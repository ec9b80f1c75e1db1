import sharp from 'sharp'
import { accept } from './accept.ts'
import { clothIn, type SeenCloth } from './cloth.ts'
import { decode } from './decode.ts'

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
  // Decoded once, for all sizes.
  const { data, width, height, channels } = await decode(bytes, sides.full)
  const raw = { width, height, channels }
  const encode = async (side: number) =>
    await sharp(data, { raw })
      .resize(side, side, { fit: 'inside', withoutEnlargement: true })
      .jpeg(jpeg)
      .toBuffer()
  const { square, seen } = clothIn({ data, ...raw })
  return {
    seen,
    width,
    height,
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
