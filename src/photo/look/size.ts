import { metresPerInch } from '../../base/units.ts'
import type { Point } from '../hull.ts'
import { axisOf } from './axis.ts'
import { type Homography, taken } from './homography.ts'
import type { Size } from './looked.ts'
import type { Mask } from './outline.ts'
import { piecesOf } from './pieces.ts'
import { marked } from './planes.ts'

const mmPerInch = 1000 * metresPerInch

/** What is seen of a garment, in a picture of its own size. */
export interface Lying {
  readonly mask: Mask
  /** How likely each pixel lies in the garment, 0 to 1. */
  readonly inside: Float32Array
  /** Points of the rim of its graphic, in shares of the picture's width and height; none where it carries none. */
  readonly graphic: readonly Point[]
}

/** What is likelier than this lies in the garment for sure; it may reach so much less far than what is taken for it. */
const likely = 0.75
const mostDoubt = 0.03

/**
 * The extents of a garment and of its graphic across and along the garment's own axis as it lies; `pose`: of the
 * sheet beside it, in a picture of that size. Null where the axis is in doubt, or how far the garment reaches.
 */
export function sizeOf(
  { mask, inside, graphic }: Lying,
  { width, height }: { readonly width: number; readonly height: number },
  { back, forth }: { readonly back: Homography; readonly forth: Homography },
): Size | null {
  const [kx, ky] = [width / mask.width, height / mask.height]
  const onPlane = (rim: readonly Point[]): Point[] =>
    rim.map(([x, y]) => taken(back, [x * kx, y * ky]))
  const rim = onPlane(rimOf(mask))
  const turn = turnOf(mask, rim, ([x, y]) => {
    const [u, v] = taken(forth, [x, y])
    return [u / kx, v / ky]
  })
  if (turn === null) return null
  const garment = reach(rim, turn)
  const least = reach(onPlane(rimOf(surest(mask, inside))), turn)
  const doubt = Math.max(1 - least.across / garment.across, 1 - least.along / garment.along)
  if (!(doubt < mostDoubt)) return null
  const printed = graphic.map(([x, y]): Point => taken(back, [x * width, y * height]))
  const picture = printed.length > 0 ? reach(printed, turn) : null
  return {
    garmentWidthIn: garment.across / mmPerInch,
    garmentLengthIn: garment.along / mmPerInch,
    graphicWidthIn: picture && picture.across / mmPerInch,
    graphicHeightIn: picture && picture.along / mmPerInch,
  }
}

/** The largest piece of what surely lies in the garment. */
function surest({ width, height, data }: Mask, inside: Float32Array): Mask {
  const sure = marked(data.length, (at) => data[at] === 1 && inside[at]! > likely)
  const { of, sizes } = piecesOf(sure, width, height, 1)
  const largest = sizes.indexOf(Math.max(...sizes)) + 1
  return { width, height, data: marked(data.length, (at) => largest > 0 && of[at] === largest) }
}

/** Where the mask ends in each row and each column, halfway between its last pixel and the next. */
function rimOf({ width, height, data }: Mask): Point[] {
  const rim: Point[] = []
  for (let y = 0, at = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1, at += 1) {
      if (!data[at]) continue
      if (x === 0 || !data[at - 1]) rim.push([x, y + 0.5])
      if (x === width - 1 || !data[at + 1]) rim.push([x + 1, y + 0.5])
      if (y === 0 || !data[at - width]) rim.push([x + 0.5, y])
      if (y === height - 1 || !data[at + width]) rim.push([x + 0.5, y + 1])
    }
  }
  return rim
}

/** Pixels of the longer side of the garment as it would be seen from straight above. */
const seenSide = 320

/** A body less like its own mirror picture, or a garment that is about as much like one over another line, has no sure axis. */
const sure = { alike: 0.6, clear: 0.02 }

/**
 * How the garment's axis is turned on the plane, radians clockwise from the plane's own upright: of the garment as it
 * would be seen from straight above, because a slanting view is no mirror picture of itself. Null where that is in doubt.
 */
function turnOf(mask: Mask, rim: readonly Point[], toMask: (at: Point) => Point): number | null {
  if (rim.length === 0) return null
  const xs = rim.map(([x]) => x)
  const ys = rim.map(([, y]) => y)
  const [left, top] = [Math.min(...xs), Math.min(...ys)]
  const [wide, high] = [Math.max(...xs) - left, Math.max(...ys) - top]
  const step = Math.max(wide, high) / seenSide
  const width = Math.ceil(wide / step) + 2
  const height = Math.ceil(high / step) + 2
  const data = marked(width * height, (at) => {
    const [x, y] = toMask([
      left + ((at % width) - 0.5) * step,
      top + (Math.floor(at / width) - 0.5) * step,
    ])
    const [column, row] = [Math.floor(x), Math.floor(y)]
    return (
      column >= 0 &&
      row >= 0 &&
      column < mask.width &&
      row < mask.height &&
      mask.data[row * mask.width + column] === 1
    )
  })
  const axis = axisOf({ width, height, data })
  return axis && axis.alike >= sure.alike && axis.clear >= sure.clear ? axis.turn : null
}

function reach(points: readonly Point[], turn: number): { across: number; along: number } {
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
  let [u1, u2, v1, v2] = [Infinity, -Infinity, Infinity, -Infinity]
  for (const [x, y] of points) {
    const u = x * cos + y * sin
    const v = y * cos - x * sin
    u1 = Math.min(u1, u)
    u2 = Math.max(u2, u)
    v1 = Math.min(v1, v)
    v2 = Math.max(v2, v)
  }
  return { across: u2 - u1, along: v2 - v1 }
}
