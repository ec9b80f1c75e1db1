import { areaOf, hull, type Point } from '../hull.ts'
import { quadAround } from './hull-quad.ts'
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
  const pieces = new Pieces(width, height)
  for (const marks of masksOf(planes)) {
    for (const { size, points } of pieces.of(marks)) {
      const rough = roughOf(size, points, width * height)
      if (rough) keep(found, rough, same * Math.max(width, height))
    }
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
const levelStep = { lightness: 5, colour: 3.5 }
const mostLevels = 18
const steepLevels = [1.2, 2, 3.2, 5, 8]
/** What is lighter, or darker, than all but this share of a picture tells no levels; asked of every so many pixels. */
const [outlying, asked] = [0.003, 7]

/** The picture cut in two in many ways. */
function* masksOf(planes: LabPlanes): Generator<Uint8Array> {
  const { l, a, b } = planes
  const size = l.length
  for (const plane of [l, a, b]) {
    const some = Float32Array.from(
      { length: Math.floor(size / asked) },
      (_, n) => plane[n * asked]!,
    )
    const low = quantile(some, outlying)
    const high = quantile(some, 1 - outlying)
    const least = plane === l ? levelStep.lightness : levelStep.colour
    const step = Math.max(least, (high - low) / mostLevels)
    for (let level = low + step / 2; level < high; level += step) {
      yield marked(size, (at) => plane[at]! >= level)
    }
  }
  const steep = steepness(planes)
  for (const level of steepLevels) yield marked(size, (at) => steep[at]! < level)
}

interface Piece {
  readonly size: number
  /** Ends of its rows: their hull is that of all. */
  readonly points: readonly Point[]
}

/** Gathers what hangs together, marked or not, in one go: a picture is cut in two many times. */
class Pieces {
  private readonly width: number
  private readonly height: number
  private readonly seen: Uint8Array
  private readonly stack: Int32Array
  private readonly first: Int32Array
  private readonly last: Int32Array

  constructor(width: number, height: number) {
    this.width = width
    this.height = height
    this.seen = new Uint8Array(width * height)
    this.stack = new Int32Array(width * height)
    this.first = new Int32Array(height)
    this.last = new Int32Array(height)
  }

  /** Those that are neither too small nor too large for a sheet, nor reach the edge of the picture. */
  *of(marks: Uint8Array): Generator<Piece> {
    const { width, height, seen } = this
    const whole = width * height
    seen.fill(0)
    for (let start = 0; start < whole; start += 1) {
      if (seen[start]) continue
      const found = this.gather(marks, start)
      const fits =
        found.size >= share.least * least.piece * whole && found.size <= share.most * whole
      if (fits && !found.atEdge) yield { size: found.size, points: this.ends(found) }
    }
  }

  private gather(marks: Uint8Array, start: number): Gathered {
    const { width, height, seen, stack, first, last } = this
    const value = marks[start]
    const top = Math.floor(start / width)
    let [size, held, bottom, atEdge] = [0, 0, top - 1, false]
    stack[held++] = start
    seen[start] = 1
    while (held > 0) {
      const at = stack[--held]!
      const y = Math.floor(at / width)
      const x = at - y * width
      size += 1
      while (bottom < y) {
        bottom += 1
        first[bottom] = width
        last[bottom] = -1
      }
      if (x < first[y]!) first[y] = x
      if (x > last[y]!) last[y] = x
      if (x === 0 || y === 0 || x === width - 1 || y === height - 1) atEdge = true
      if (x > 0 && !seen[at - 1] && marks[at - 1] === value) {
        seen[at - 1] = 1
        stack[held++] = at - 1
      }
      if (x < width - 1 && !seen[at + 1] && marks[at + 1] === value) {
        seen[at + 1] = 1
        stack[held++] = at + 1
      }
      if (y > 0 && !seen[at - width] && marks[at - width] === value) {
        seen[at - width] = 1
        stack[held++] = at - width
      }
      if (y < height - 1 && !seen[at + width] && marks[at + width] === value) {
        seen[at + width] = 1
        stack[held++] = at + width
      }
    }
    return { size, atEdge, top, bottom }
  }

  private ends({ top, bottom }: Gathered): Point[] {
    const points: Point[] = []
    for (let y = top; y <= bottom; y += 1) {
      const [left, right] = [this.first[y]!, this.last[y]! + 1]
      points.push([left, y], [left, y + 1], [right, y], [right, y + 1])
    }
    return points
  }
}

interface Gathered {
  readonly size: number
  readonly atEdge: boolean
  /** Its first row and its last. */
  readonly top: number
  readonly bottom: number
}

function roughOf(size: number, points: readonly Point[], whole: number): Rough | null {
  const around = hull(points)
  const area = areaOf(around)
  if (area < share.least * whole || size < least.piece * area) return null
  const corners = quadAround(around)
  if (!corners) return null
  const filled = area / areaOf(corners)
  return filled >= least.filled ? { corners, filled } : null
}
