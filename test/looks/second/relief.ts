import sharp from 'sharp'
import type { Chance, Range } from './chance.ts'
import type { Size } from './svg.ts'

/** A number for each pixel of a picture: in its column `x` and its row `y`, and `at` counts them row by row. */
export type PerPixel = (x: number, y: number, at: number) => number

/** What a surface that is not even throws back beyond an even one, as a part of the light; below 0 it is less. */
export type Relief = PerPixel

/** Smooth hills and hollows: how many px one is `wide`, and how `deep`, as a part of the light. */
export async function hilly(
  chance: Chance,
  { width, height }: Size,
  wide: Range,
  deep: Range,
): Promise<Relief> {
  const cell = chance.real(...wide)
  // A cell more on either side, so that the picture is covered whatever the cells' width.
  const columns = Math.ceil(width / cell) + 2
  const rows = Math.ceil(height / cell) + 2
  const coarse = Uint8Array.from({ length: columns * rows }, () => chance.whole(0, 255))
  const smooth = await sharp(coarse, { raw: { width: columns, height: rows, channels: 1 } })
    .resize(width, height, { fit: 'fill', kernel: 'cubic' })
    .extractChannel(0)
    .raw()
    .toBuffer()
  const depth = chance.real(...deep)
  return (_x, _y, at) => depth * (smooth[at]! / 128 - 1)
}

/** Up to five folds, each lit on its one side and dark on its other, and flat towards its ends. */
export function folded(chance: Chance, size: Size): readonly Relief[] {
  return Array.from({ length: chance.whole(0, 5) }, () => fold(chance, size))
}

/** `wide` is a fold's half width and `reach` its half length, px. */
function fold(chance: Chance, { width, height }: Size): Relief {
  const middleX = chance.real(0.2, 0.8) * width
  const middleY = chance.real(0.2, 0.8) * height
  const towards = chance.real(0, Math.PI)
  const wide = chance.real(4, 20)
  const reach = chance.real(80, 300)
  const depth = chance.real(-0.25, 0.25)
  const cos = Math.cos(towards)
  const sin = Math.sin(towards)
  return (x, y) => {
    const along = (x - middleX) * cos + (y - middleY) * sin
    if (Math.abs(along) >= reach) return 0
    const across = (-(x - middleX) * sin + (y - middleY) * cos) / wide
    return depth * across * Math.exp(-0.5 * across ** 2) * (1 - (along / reach) ** 2)
  }
}

/** Threads that cross, a few px apart. */
export function woven(chance: Chance, { width, height }: Size): Relief {
  const depth = chance.real(0, 0.06)
  const pitch = chance.real(2, 4)
  const waves = Float64Array.from({ length: Math.max(width, height) }, (_, at) =>
    Math.sin((at / pitch) * 3),
  )
  return (x, y) => depth * (waves[x]! * waves[y]!)
}
