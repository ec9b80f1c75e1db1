import sharp, { type Metadata } from 'sharp'
import { Failure } from '../base/failures.ts'
import { acceptBytes, photoLimits } from './accept-bytes.ts'
import type { PhotoType } from './sniff.ts'

/** `width` and `height` in pixels of the upright picture. */
export interface Accepted {
  readonly type: PhotoType
  readonly width: number
  readonly height: number
}

/**
 * Looks at the bytes alone: a name or a declared type is a guess. Reads the header and decodes no
 * picture. Throws `empty_file`, `too_large`, `unsupported_type`, `corrupt_image`, `too_many_pixels`
 * or `too_small`.
 */
export async function accept(bytes: Uint8Array): Promise<Accepted> {
  const type = acceptBytes(bytes)
  const { width, height } = await readHeader(bytes, type)
  if (width * height > photoLimits.pixels) {
    throw new Failure('too_many_pixels', { width, height, most: photoLimits.pixels })
  }
  const [shorter, longer] = width < height ? [width, height] : [height, width]
  if (shorter < photoLimits.shorterSide || longer > shorter * photoLimits.ratio) {
    throw new Failure('too_small', { width, height, least: photoLimits.shorterSide })
  }
  return { type, width, height }
}

async function readHeader(bytes: Uint8Array, type: PhotoType): Promise<Metadata['autoOrient']> {
  const header = await sharp(bytes, { limitInputPixels: false })
    .metadata()
    .catch((cause: unknown) => {
      throw new Failure('corrupt_image', {}, { cause })
    })
  if (typeIn(header) !== type) throw new Failure('unsupported_type')
  return header.autoOrient
}

function typeIn({ format, compression }: Metadata): string {
  if (format !== 'heif') return format
  return compression === 'av1' ? 'avif' : 'heic'
}
