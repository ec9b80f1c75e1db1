import type { Point } from '../hull.ts'
import type { Group } from './groups.ts'
import type { SeenGarment } from './look.ts'

/** An edge lies where the difference to the cloth has fallen to this part of what it is near by. */
const edge = 0.5
/** So far around what is near by, and so far beyond the rim an edge may lie, pixels of the straightened garment. */
const [nearBy, beyond] = [2, 3]
const sides = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
] as const

/** So many ways of gathering print must come to about the same box, or a part of the picture may be missing. */
const agreeing = { ways: 3, box: 0.9 }

/** Whether the picture's extent is beyond doubt. */
function isSure(all: readonly Group[], picture: Group): boolean {
  const like = all.filter((group) => inCommon(group, picture) >= agreeing.box)
  return new Set(like.map(({ pass }) => pass)).size >= agreeing.ways
}

/** The area that the boxes of two groups share, in parts of what either covers. */
function inCommon(one: Group, other: Group): number {
  const across = Math.min(one.right, other.right) - Math.max(one.left, other.left)
  const down = Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top)
  const both = Math.max(0, across) * Math.max(0, down)
  return both / (areaOf(one) + areaOf(other) - both)
}

const areaOf = ({ left, top, right, bottom }: Group): number => (right - left) * (bottom - top)

/**
 * Points of the rim of the picture that a garment carries, in shares of the photo's width and height; none where it
 * carries none, or where it may reach further. Print is found a little beyond its edge, because faint pixels count: here the edge is felt for.
 */
export function graphicRim({ print, base, straight }: SeenGarment): Point[] {
  const { picture } = print
  if (!picture || !isSure(print.print.groups, picture)) return []
  const { of } = picture
  const { width, height } = straight.pixels
  const off = (at: number): number =>
    Math.hypot(base.offL[at] ?? 0, base.offA[at] ?? 0, base.offB[at] ?? 0)
  const rim: Point[] = []
  for (let v = 1, at = width; v < height - 1; v += 1) {
    for (let u = 0; u < width; u += 1, at += 1) {
      if (of[at] !== picture.piece) continue
      const open = sides.filter(([du, dv]) => of[at + dv * width + du] !== picture.piece)
      const level = open.length > 0 ? edge * mostAround(off, at, width) : 0
      for (const [du, dv] of open) {
        const away = edgeFrom((n) => off(at + n * (dv * width + du)), level)
        if (away !== null) rim.push(straight.back(u + 0.5 + away * du, v + 0.5 + away * dv))
      }
    }
  }
  return rim
}

function mostAround(off: (at: number) => number, at: number, width: number): number {
  let most = 0
  for (let dv = -nearBy; dv <= nearBy; dv += 1)
    for (let du = -nearBy; du <= nearBy; du += 1) most = Math.max(most, off(at + dv * width + du))
  return most
}

/** How far from a pixel's middle the difference falls to that level, by steps outwards; null where it is never above. */
function edgeFrom(off: (steps: number) => number, level: number): number | null {
  let from = -nearBy
  while (from <= 0 && off(from) < level) from += 1
  if (from > 0) return null
  while (from < beyond && off(from + 1) >= level) from += 1
  const [inner, outer] = [off(from), off(from + 1)]
  return from + (inner > outer ? Math.min(1, (inner - level) / (inner - outer)) : 0.5)
}
