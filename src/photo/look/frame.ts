import type { Pixels } from '../cloth.ts'
import type { Mask } from './outline.ts'

/** How a garment lies in a picture: its own axis and its extents across and along it, in pixels. */
export interface Frame {
  /** The middle of its box along the axis. */
  readonly x: number
  readonly y: number
  /** How far the axis is turned from upright, radians from −90° to 90°, clockwise. */
  readonly turn: number
  readonly across: number
  readonly along: number
  /** The share of the garment that its mirror picture covers. */
  readonly alike: number
}

/** Cells of the grid on which a garment is folded over to find its axis, along the longer side. */
const coarse = 72

/** The axis over which the mask is most like its own mirror picture; `null` where there is no garment. */
export function frameOf(mask: Mask): Frame | null {
  const folded = foldedOver(mask)
  if (!folded) return null
  const { x, y, like } = folded
  let [turn, best] = [0, -1]
  for (let degrees = -90; degrees < 90; degrees += 5) {
    // Of axes that are about as good the one nearest to upright: most garments lie so.
    const found = like((degrees * Math.PI) / 180) - Math.abs(degrees) * 1e-4
    if (found > best) [turn, best] = [(degrees * Math.PI) / 180, found]
  }
  for (let step = (2.5 * Math.PI) / 180; step > 0.004; step /= 2) {
    for (const tried of [turn - step, turn + step]) {
      const found = like(tried)
      if (found > best) [turn, best] = [tried, found]
    }
  }
  return around(mask, { x, y, turn, alike: like(turn) })
}

interface Folded extends Point {
  /** The share of the garment that its mirror picture covers, over the axis through its middle with that turn. */
  readonly like: (turn: number) => number
}

/** A garment about its middle, to be folded over; `null` where there is none. */
export function foldedOver(mask: Mask): Folded | null {
  const points = pointsOf(mask, Math.max(1, Math.round(Math.max(mask.width, mask.height) / coarse)))
  if (points.length < 12) return null
  const x = points.reduce((sum, point) => sum + point.x, 0) / points.length
  const y = points.reduce((sum, point) => sum + point.y, 0) / points.length
  return { x, y, like: (turn) => likeMirrored(mask, points, x, y, turn) }
}

interface Point {
  readonly x: number
  readonly y: number
}

function pointsOf({ width, height, data }: Mask, step: number): Point[] {
  const points: Point[] = []
  for (let y = step >> 1; y < height; y += step) {
    for (let x = step >> 1; x < width; x += step) if (data[y * width + x]) points.push({ x, y })
  }
  return points
}

/** The share of the points whose mirror picture lies in the mask. */
function likeMirrored(
  { width, height, data }: Mask,
  points: readonly Point[],
  cx: number,
  cy: number,
  turn: number,
): number {
  const [cos, sin] = [Math.cos(2 * turn), Math.sin(2 * turn)]
  let inside = 0
  for (const { x, y } of points) {
    const [dx, dy] = [x - cx, y - cy]
    const mx = Math.round(cx - dx * cos - dy * sin)
    const my = Math.round(cy - dx * sin + dy * cos)
    if (mx >= 0 && mx < width && my >= 0 && my < height) inside += data[my * width + mx]!
  }
  return inside / points.length
}

function around(
  mask: Mask,
  { x: cx, y: cy, turn, alike }: Pick<Frame, 'x' | 'y' | 'turn' | 'alike'>,
): Frame {
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
  let [u1, u2, v1, v2] = [Infinity, -Infinity, Infinity, -Infinity]
  for (const { x, y } of pointsOf(mask, 1)) {
    const u = (x - cx) * cos + (y - cy) * sin
    const v = (y - cy) * cos - (x - cx) * sin
    u1 = Math.min(u1, u)
    u2 = Math.max(u2, u)
    v1 = Math.min(v1, v)
    v2 = Math.max(v2, v)
  }
  const [u, v] = [(u1 + u2) / 2, (v1 + v2) / 2]
  return {
    x: cx + u * cos - v * sin,
    y: cy + u * sin + v * cos,
    turn,
    alike,
    across: u2 - u1 + 1,
    along: v2 - v1 + 1,
  }
}

/** A garment cut out of its picture and set upright. */
export interface Straight {
  readonly pixels: Pixels
  /** 1 where the garment is. */
  readonly mask: Uint8Array
  /** Where a point of it lies in the picture, in shares of the picture's width and height. */
  readonly back: (u: number, v: number) => readonly [x: number, y: number]
}

/** `side`: pixels of its longer side. The frame is one of the mask, the picture may be larger than that. */
export function straightened(picture: Pixels, mask: Mask, frame: Frame, side: number): Straight {
  const longer = Math.max(frame.across, frame.along)
  const step = longer / side
  const width = Math.max(8, Math.round(frame.across / step))
  const height = Math.max(8, Math.round(frame.along / step))
  const [cos, sin] = [Math.cos(frame.turn), Math.sin(frame.turn)]
  const [scaleX, scaleY] = [picture.width / mask.width, picture.height / mask.height]
  const data = new Uint8Array(width * height * 3)
  const inside = new Uint8Array(width * height)
  for (let v = 0, at = 0; v < height; v += 1) {
    const dv = (v + 0.5 - height / 2) * step
    for (let u = 0; u < width; u += 1, at += 1) {
      const du = (u + 0.5 - width / 2) * step
      const x = frame.x + du * cos - dv * sin
      const y = frame.y + du * sin + dv * cos
      inside[at] = maskAt(mask, x, y)
      sample(picture, (x + 0.5) * scaleX - 0.5, (y + 0.5) * scaleY - 0.5, data, at * 3)
    }
  }
  return {
    pixels: { data, width, height, channels: 3 },
    mask: inside,
    back: (u, v) => {
      const [du, dv] = [(u - width / 2) * step, (v - height / 2) * step]
      return [
        (frame.x + du * cos - dv * sin + 0.5) / mask.width,
        (frame.y + du * sin + dv * cos + 0.5) / mask.height,
      ]
    },
  }
}

function maskAt({ width, height, data }: Mask, x: number, y: number): number {
  const [column, row] = [Math.round(x), Math.round(y)]
  if (column < 0 || row < 0 || column >= width || row >= height) return 0
  return data[row * width + column]!
}

/** Between the four nearest pixels. */
function sample(from: Pixels, x: number, y: number, to: Uint8Array, at: number): void {
  const left = Math.min(from.width - 2, Math.max(0, Math.floor(x)))
  const top = Math.min(from.height - 2, Math.max(0, Math.floor(y)))
  const fx = Math.min(1, Math.max(0, x - left))
  const fy = Math.min(1, Math.max(0, y - top))
  const one = (top * from.width + left) * 3
  const below = one + from.width * 3
  for (let n = 0; n < 3; n += 1) {
    const high = from.data[one + n]! * (1 - fx) + from.data[one + 3 + n]! * fx
    const low = from.data[below + n]! * (1 - fx) + from.data[below + 3 + n]! * fx
    to[at + n] = high * (1 - fy) + low * fy + 0.5
  }
}
