import sharp from 'sharp'
import { lights } from './light.ts'

/** Pixels row by row: four channels are sRGB with opacity (not multiplied in), one is coverage. */
export interface Raster {
  readonly data: Uint8Array
  readonly width: number
  readonly height: number
}

/** A drawing filled out to so many pixels, four channels. */
export async function fromSvg(
  svg: string | Buffer,
  width: number,
  height: number,
): Promise<Raster> {
  const { data, info } = await sharp(Buffer.from(svg), { limitInputPixels: 100_000_000 })
    .resize(width, height, { fit: 'fill' })
    .ensureAlpha()
    .toColourspace('srgb')
    .raw()
    .toBuffer({ resolveWithObject: true })
  return {
    data: new Uint8Array(data.buffer, data.byteOffset, data.length),
    width: info.width,
    height: info.height,
  }
}

/** One channel of a raster of four, by itself. */
export function channelOf({ data, width, height }: Raster, channel: number): Raster {
  const out = new Uint8Array(width * height)
  for (let at = 0; at < out.length; at++) out[at] = data[at * 4 + channel]!
  return { data: out, width, height }
}

/**
 * Light (multiplied by opacity) and opacity, 0 to 1, at a point in pixels, into `out`; clear beyond its
 * edges, or joined to the other edge where it `tiles`.
 */
export function sample4(
  from: Raster,
  x: number,
  y: number,
  tiles: boolean,
  out: Float32Array,
): void {
  const { data, width, height } = from
  out[0] = out[1] = out[2] = out[3] = 0
  const atX = x - 0.5
  const atY = y - 0.5
  let left = Math.floor(atX)
  let top = Math.floor(atY)
  const across = atX - left
  const down = atY - top
  if (tiles) {
    left = ((left % width) + width) % width
    top = ((top % height) + height) % height
  } else if (left < -1 || top < -1 || left >= width || top >= height) return
  for (let j = 0; j < 2; j++) {
    let row = top + j
    if (row >= height || row < 0) {
      if (!tiles) continue
      row -= height
    }
    const downWeight = j === 0 ? 1 - down : down
    for (let i = 0; i < 2; i++) {
      let column = left + i
      if (column >= width || column < 0) {
        if (!tiles) continue
        column -= width
      }
      const at = (row * width + column) * 4
      const alpha = data[at + 3]!
      if (alpha === 0) continue
      const weight = ((i === 0 ? 1 - across : across) * downWeight * alpha) / 255
      out[0] += lights[data[at]!]! * weight
      out[1] += lights[data[at + 1]!]! * weight
      out[2] += lights[data[at + 2]!]! * weight
      out[3] += weight
    }
  }
}

/** Coverage, 0 to 1, of a raster of one channel at a point in pixels; none beyond its edges. */
export function sample1({ data, width, height }: Raster, x: number, y: number): number {
  const atX = x - 0.5
  const atY = y - 0.5
  const left = Math.floor(atX)
  const top = Math.floor(atY)
  if (left < 0 || top < 0 || left >= width - 1 || top >= height - 1) return 0
  const at = top * width + left
  const across = atX - left
  const above = data[at]! + (data[at + 1]! - data[at]!) * across
  const below = data[at + width]! + (data[at + width + 1]! - data[at + width]!) * across
  return (above + (below - above) * (atY - top)) / 255
}

/** A raster as it is seen where its opacity is at least `least` (0 to 255): the box, in pixels. */
export function boxOf(
  { data, width, height }: Raster,
  least: number,
): { left: number; top: number; right: number; bottom: number } | null {
  let left = width
  let top = height
  let right = -1
  let bottom = -1
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      if (data[(y * width + x) * 4 + 3]! >= least) {
        if (x < left) left = x
        if (x > right) right = x
        if (y < top) top = y
        bottom = y
      }
  return right < 0 ? null : { left, top, right: right + 1, bottom: bottom + 1 }
}

export function cropped(
  { data, width }: Raster,
  box: { left: number; top: number; right: number; bottom: number },
): Raster {
  const size = { width: box.right - box.left, height: box.bottom - box.top }
  const out = new Uint8Array(size.width * size.height * 4)
  for (let y = 0; y < size.height; y++) {
    const from = ((box.top + y) * width + box.left) * 4
    out.set(data.subarray(from, from + size.width * 4), y * size.width * 4)
  }
  return { data: out, ...size }
}
