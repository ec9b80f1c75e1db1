import sharp from 'sharp'

/** Tags and types of CIPA DC-008-2019 (Exif 2.32): 4.6.2, 4.6.3, 4.6.5. */
const exifFields = 0x8769
const focal35 = 0xa405
const [short, long] = [3, 4]

/** Focal lengths that cameras have, in terms of 35 mm film. */
const [least, most] = [8, 300]

/** The focal length in terms of 35 mm film, mm, that a photo's file tells; null where it tells none. */
export const focalIn = async (photo: Uint8Array): Promise<number | null> =>
  focalOf((await sharp(photo, { limitInputPixels: false }).metadata()).exif)

/**
 * The focal length in terms of 35 mm film, mm, that an Exif block tells (as sharp's metadata give it: with or
 * without `Exif\0\0` before the TIFF header). Null where it tells none (0 means unknown there), or one that no
 * camera has, or is broken: nothing is read beyond its end. A focal length without the sensor's size says nothing.
 */
export function focalOf(block: Uint8Array | undefined): number | null {
  if (!block) return null
  const named = block.length > 6 && String.fromCharCode(...block.subarray(0, 4)) === 'Exif'
  const bytes = named ? block.subarray(6) : block
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  if (view.byteLength < 8) return null
  const order = view.getUint16(0)
  if (order !== 0x4949 && order !== 0x4d4d) return null
  const little = order === 0x4949
  if (view.getUint16(2, little) !== 42) return null
  const inner = entryOf(view, view.getUint32(4, little), exifFields, little)
  const told = inner === null ? null : entryOf(view, inner, focal35, little)
  return told !== null && told >= least && told <= most ? told : null
}

/** The one number of an entry of a directory. */
function entryOf(view: DataView, start: number, tag: number, little: boolean): number | null {
  if (start + 2 > view.byteLength) return null
  const count = view.getUint16(start, little)
  for (let n = 0; n < count; n += 1) {
    const at = start + 2 + 12 * n
    if (at + 12 > view.byteLength) return null
    if (view.getUint16(at, little) !== tag) continue
    const type = view.getUint16(at + 2, little)
    if (view.getUint32(at + 4, little) !== 1) return null
    if (type === short) return view.getUint16(at + 8, little)
    return type === long ? view.getUint32(at + 8, little) : null
  }
  return null
}
