import type { Point } from './homography.ts'
import { areaOf, hullOf, quadAround } from './hull-quad.ts'
import { piecesOf } from './pieces.ts'
import { type LabPlanes, marked, quantile, steepness } from './planes.ts'

/** A four-sided shape in a small picture, roughly. */
export interface Rough {
  /** Clockwise as pictures are seen, px of that picture. */
  readonly corners: readonly Point[]
  /** How nearly its piece's hull fills it, 0 to 1. */
  readonly filled: number
}

/** Of the picture: less is too small to be measured, more leaves no room for a garment. */
const share = { least: 0.0007, most: 0.4 }
/** A hull that fills less of its four-sided shape is no sheet; a piece that fills less of its hull neither. */
const least = { filled: 0.91, piece: 0.5 }
/** Corners so near, in parts of the picture, make two shapes one. */
const same = 0.012

/** All four-sided shapes that stand out in lightness, in colour or by an outline of their own; best filled first. */
export function roughsIn(planes: LabPlanes): Rough[] {
  const { width, height } = planes
  const found: Rough[] = []
  for (const marks of masksOf(planes)) {
    for (const rough of quadsOf(marks, width, height))
      keep(found, rough, same * Math.max(width, height))
  }
  return found.sort((a, b) => b.filled - a.filled)
}

function keep(found: Rough[], rough: Rough, near: number): void {
  const at = found.findIndex(({ corners }) => alike(corners, rough.corners, near))
  if (at < 0) found.push(rough)
  else if (found[at]!.filled < rough.filled) found[at] = rough
}

/** Whether both have the same corners, nearly. */
export const alike = (one: readonly Point[], other: readonly Point[], near: number): boolean =>
  one.every(([x, y]) => other.some(([u, v]) => Math.hypot(x - u, y - v) < near))

/** Steps between the levels at which a picture is cut, CIELAB, and how many at most. */
const levelStep = 5
const steepLevels = [1.2, 2, 3.2, 5, 8]

function* masksOf(planes: LabPlanes): Generator<Uint8Array> {
  const { l, a, b } = planes
  const size = l.length
  for (const plane of [l, a, b]) {
    const sorted = Float32Array.from(plane)
    const low = quantile(sorted, 0.003)
    const high = quantile(sorted, 0.997)
    const step = Math.max(plane === l ? levelStep : 3.5, (high - low) / 18)
    for (let level = low + step / 2; level < high; level += step) {
      yield marked(size, (at) => plane[at]! >= level)
      yield marked(size, (at) => plane[at]! < level)
    }
  }
  const steep = steepness(planes)
  for (const level of steepLevels) yield marked(size, (at) => steep[at]! < level)
}

function quadsOf(marks: Uint8Array, width: number, height: number): Rough[] {
  const { of, sizes, atEdge } = piecesOf(marks, width, height, 1)
  const whole = width * height
  const ends = sizes.map((size, n) =>
    !atEdge[n] && size >= share.least * least.piece * whole && size <= share.most * whole
      ? ([] as Point[])
      : null,
  )
  if (ends.every((one) => one === null)) return []
  for (let y = 0, at = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1, at += 1) {
      const points = ends[of[at]! - 1]
      if (!points) continue
      if (of[at - 1] !== of[at]) points.push([x, y], [x, y + 1])
      if (of[at + 1] !== of[at]) points.push([x + 1, y], [x + 1, y + 1])
    }
  }
  return ends.flatMap((points, n) => {
    if (!points) return []
    const hull = hullOf(points)
    const area = areaOf(hull)
    if (area < share.least * whole || sizes[n]! < least.piece * area) return []
    const corners = quadAround(hull)
    if (!corners) return []
    const filled = area / areaOf(corners)
    return filled >= least.filled ? [{ corners, filled }] : []
  })
}
