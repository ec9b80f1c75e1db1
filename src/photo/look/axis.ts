import { distances } from './distances.ts'
import { foldedOver, frameOf } from './frame.ts'
import type { Mask } from './outline.ts'
import { marked } from './planes.ts'

/** The axis of a garment, and how surely it is one. */
export interface Axis {
  /** How far it is turned from upright, radians, clockwise. */
  readonly turn: number
  /** How nearly the rim of the body is its own mirror picture over the axis, 0 to 1. */
  readonly alike: number
  /** How much more of the whole garment its mirror picture covers over this axis than over the one square to it. */
  readonly clear: number
}

/** Sleeves are narrower than this share of the body. */
const body = 0.6
/** How far from the axis of the whole garment the body's is looked for: turned, degrees, and aside, of the longer side. */
const search = { turn: 16, aside: 0.09 }
/** Rims that run further apart than this do not fit, of the longer side. */
const reach = 0.016

/**
 * The axis over which the body of a garment is most like its own mirror picture. Sleeves lie as they were dropped
 * and tell nothing: what is narrow is left out. `mask`: as seen from straight above, nothing of it at the edge. Null
 * where there is no garment.
 */
export function axisOf(mask: Mask): Axis | null {
  const [start, whole] = [frameOf(mask), foldedOver(mask)]
  if (!start || !whole) return null
  const rim = bodyRim(mask)
  const longer = Math.max(mask.width, mask.height)
  const like = mirrorOf(rim, mask)
  const near = bestNear(
    { turn: start.turn, aside: 0 },
    { turn: search.turn, by: 1, aside: search.aside * longer, far: 2 * reach * longer },
    like,
  )
  const fine = { turn: 1.5, by: 0.25, aside: 0.0125 * longer, far: reach * longer }
  const { turn, alike } = bestNear(near, fine, like)
  return { turn, alike, clear: whole.like(turn) - whole.like(turn + Math.PI / 2) }
}

const degree = Math.PI / 180

interface Steps {
  /** How far to turn at most and by how much each time, degrees. */
  readonly turn: number
  readonly by: number
  /** How far to move aside at most, in eight steps, px. */
  readonly aside: number
  readonly far: number
}

function bestNear(
  start: Fold,
  { turn, by, aside, far }: Steps,
  like: (fold: Fold, far: number) => number,
): Fold & { readonly alike: number } {
  let [best, alike] = [start, -1]
  for (let turned = -turn; turned <= turn; turned += by) {
    for (let moved = -8; moved <= 8; moved += 1) {
      const tried = { turn: start.turn + turned * degree, aside: start.aside + (moved / 8) * aside }
      const found = like(tried, far)
      if (found > alike) [best, alike] = [tried, found]
    }
  }
  return { ...best, alike }
}

/** A line to fold over: turned from upright, and how far it passes beside the middle, px. */
interface Fold {
  readonly turn: number
  readonly aside: number
}

/** The rim of what is wide: of all discs within the garment that are about as large as the largest. */
function bodyRim({ width, height, data }: Mask): number[] {
  const deep = distances(
    marked(data.length, (at) => data[at] === 0),
    width,
    height,
  )
  const radius = body * deep.reduce((most, one) => Math.max(most, one), 0)
  const fromCore = distances(
    marked(data.length, (at) => deep[at]! >= radius),
    width,
    height,
  )
  const rim: number[] = []
  for (let at = 0; at < data.length; at += 1)
    if (deep[at] === 1 && fromCore[at]! <= radius + 0.5) rim.push(at)
  return rim
}

/** How much of a rim comes to lie on itself when it is folded over a line: what is `far` px off does not count. */
function mirrorOf(
  rim: readonly number[],
  { width, height }: Mask,
): (fold: Fold, far: number) => number {
  const marks = new Uint8Array(width * height)
  for (const at of rim) marks[at] = 1
  const off = distances(marks, width, height)
  const points = rim.map((at): [number, number] => [at % width, Math.floor(at / width)])
  const [cx, cy] = [0, 1].map(
    (n) => points.reduce((sum, point) => sum + point[n]!, 0) / points.length,
  ) as [number, number]
  return ({ turn, aside }, far) => {
    const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
    let sum = 0
    for (const [x, y] of points) {
      const across = 2 * ((x - cx) * cos + (y - cy) * sin - aside)
      const column = Math.round(x - across * cos)
      const row = Math.round(y - across * sin)
      if (column < 0 || row < 0 || column >= width || row >= height) continue
      const part = off[row * width + column]! / far
      if (part < 1) sum += 1 - part * part
    }
    return sum / points.length
  }
}
