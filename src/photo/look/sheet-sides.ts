import type { Pixels } from '../cloth.ts'
import type { Point } from '../hull.ts'
import { meeting } from './hull-quad.ts'

/** A four-sided shape whose sides were felt for in a picture. */
export interface Sides {
  /** Clockwise as pictures are seen, px; x and y are those of pixels' corners. */
  readonly corners: readonly Point[]
  /** Of the side with least: the share of the places along it where an edge was met on its line. */
  readonly met: number
  /** Of the side with least: how far what lies within differs from what lies beyond, codes of 255. */
  readonly contrast: number
}

/** The ends of a side, where corners are round or nibbled, are left out: in parts of it. */
const ends = 0.11
/** A shape of which a side meets fewer edges at the first look is not looked at again. */
const hopeless = 0.4
/** How near to a side's line an edge counts as met, px. */
const near = 1.3

/**
 * Feels for the edges along each side of a rough shape, first within `reach` px and then closer, lays a line
 * through most of them and lets the lines meet. Null where a side has none.
 */
export function sidesOf(picture: Pixels, rough: readonly Point[], reach: number): Sides | null {
  let corners = rough
  let found: Sides | null = null
  for (const look of [
    { far: reach, places: 1 / 3 },
    { far: Math.max(3, reach / 3), places: 1 },
  ]) {
    const lines = corners.map((from, n) => lineAlong(picture, from, corners[(n + 1) % 4]!, look))
    if (lines.some((line) => line === null)) return null
    const met = lines.map((line, n) => {
      const before = lines[(n + 3) % 4]!
      return meeting(before.from, before.to, line!.from, line!.to)
    })
    if (met.some((point) => point === null)) return null
    corners = met as Point[]
    found = {
      corners,
      met: Math.min(...lines.map((line) => line!.met)),
      contrast: Math.min(...lines.map((line) => line!.contrast)),
    }
    if (found.met < hopeless) return null
  }
  return found
}

interface Line {
  readonly from: Point
  readonly to: Point
  readonly met: number
  readonly contrast: number
}

/** How far off a side edges are looked for, px, and at what part of the places along it. */
interface Look {
  readonly far: number
  readonly places: number
}

interface Edge {
  /** Along the side and off it (outwards more), px. */
  readonly along: number
  readonly off: number
  readonly strength: number
}

function lineAlong(
  picture: Pixels,
  from: Point,
  to: Point,
  { far, places: part }: Look,
): Line | null {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  if (length < 12) return null
  const way: Point = [(to[0] - from[0]) / length, (to[1] - from[1]) / length]
  // Clockwise as seen: what lies to the left of the way lies beyond the shape.
  const out: Point = [way[1], -way[0]]
  const count = Math.max(16, Math.round(part * Math.min(72, length / 4)))
  const probe = new Probe(picture, Math.ceil(far))
  const places = Array.from(
    { length: count },
    (_, n) => length * (ends + ((1 - 2 * ends) * (n + 0.5)) / count),
  )
  const edges = places.flatMap((along) => {
    const at: Point = [from[0] + along * way[0], from[1] + along * way[1]]
    return probe.edges(at, way, out).map((edge) => ({ ...edge, along }))
  })
  const fitted = through(edges, length)
  if (!fitted) return null
  const { offset, slope } = fitted
  const offAt = (along: number): number => offset + slope * along
  const onLine = new Set(
    edges.filter((edge) => Math.abs(edge.off - offAt(edge.along)) < near).map(({ along }) => along),
  )
  const pointAt = (along: number): Point => [
    from[0] + along * way[0] + offAt(along) * out[0],
    from[1] + along * way[1] + offAt(along) * out[1],
  ]
  return {
    from: pointAt(0),
    to: pointAt(length),
    met: onLine.size / count,
    contrast: Math.min(
      contrastAt(picture, places.map(pointAt), out, close),
      contrastAt(picture, places.map(pointAt), out, [further * length, further * length + 4]),
    ),
  }
}

/** Edges met more strongly count more, to a limit. */
const enough = 40

/** The line that most edges lie on: tried through pairs, then by least squares over those near it. */
function through(edges: readonly Edge[], length: number): { offset: number; slope: number } | null {
  if (edges.length < 8) return null
  const weight = ({ strength }: Edge): number => Math.min(strength, enough)
  let [offset, slope, most] = [0, 0, -1]
  const left = edges.filter(({ along }) => along < length * 0.42)
  const right = edges.filter(({ along }) => along > length * 0.58)
  const stepLeft = Math.max(1, Math.floor(left.length / 16))
  const stepRight = Math.max(1, Math.floor(right.length / 16))
  for (let i = 0; i < left.length; i += stepLeft) {
    for (let j = 0; j < right.length; j += stepRight) {
      const [a, b] = [left[i]!, right[j]!]
      const tried = (b.off - a.off) / (b.along - a.along)
      const start = a.off - tried * a.along
      let sum = 0
      for (const edge of edges) {
        const off = Math.abs(edge.off - start - tried * edge.along)
        if (off < near) sum += weight(edge) * (1 - off / near)
      }
      if (sum > most) [offset, slope, most] = [start, tried, sum]
    }
  }
  if (most < 0) return null
  for (let round = 0; round < 3; round += 1) {
    let [w, x, y, xx, xy] = [0, 0, 0, 0, 0]
    for (const edge of edges) {
      const off = (edge.off - offset - slope * edge.along) / near
      if (Math.abs(off) >= 1) continue
      const counts = weight(edge) * (1 - off * off) ** 2
      w += counts
      x += counts * edge.along
      y += counts * edge.off
      xx += counts * edge.along ** 2
      xy += counts * edge.along * edge.off
    }
    const spread = w * xx - x * x
    if (!(spread > 1e-6 * w * w)) return null
    slope = (w * xy - x * y) / spread
    offset = (y - slope * x) / w
  }
  return { offset, slope }
}

/** Steps of a profile across a side, px; least strength of an edge, codes of 255 over two px. */
const step = 0.5
const faintest = 5
const strongest = 3

/** Reads profiles across a side. */
class Probe {
  private readonly picture: Pixels
  private readonly half: number
  private readonly profile: Float32Array
  private readonly rises: Float32Array

  constructor(picture: Pixels, reach: number) {
    this.picture = picture
    this.half = Math.ceil((reach + 2) / step)
    this.profile = new Float32Array(3 * (2 * this.half + 1))
    this.rises = new Float32Array(2 * this.half + 1)
  }

  /** The strongest edges across a place, strongest first. */
  edges(at: Point, way: Point, out: Point): Omit<Edge, 'along'>[] {
    const { half, profile, rises } = this
    const count = 2 * half + 1
    for (let n = 0; n < count; n += 1) {
      const off = (n - half) * step
      let [r, g, b] = [0, 0, 0]
      for (let side = -1; side <= 1; side += 1) {
        const x = at[0] + off * out[0] + side * 1.5 * way[0]
        const y = at[1] + off * out[1] + side * 1.5 * way[1]
        r += sampled(this.picture, x, y, 0)
        g += sampled(this.picture, x, y, 1)
        b += sampled(this.picture, x, y, 2)
      }
      profile[3 * n] = r / 3
      profile[3 * n + 1] = g / 3
      profile[3 * n + 2] = b / 3
    }
    const span = Math.round(1 / step)
    rises.fill(0)
    for (let n = span; n < count - span; n += 1) {
      let sum = 0
      for (let c = 0; c < 3; c += 1) {
        sum += (profile[3 * (n + span) + c]! - profile[3 * (n - span) + c]!) ** 2
      }
      rises[n] = Math.sqrt(sum)
    }
    const found: Omit<Edge, 'along'>[] = []
    for (let n = span + 1; n < count - span - 1; n += 1) {
      const [before, here, after] = [rises[n - 1]!, rises[n]!, rises[n + 1]!]
      if (here < faintest || here < before || here <= after) continue
      const bend = before - 2 * here + after
      const shift = bend < 0 ? (0.5 * (before - after)) / bend : 0
      found.push({ off: (n - half + shift) * step, strength: here })
    }
    return found.sort((a, b) => b.strength - a.strength).slice(0, strongest)
  }
}

/** One channel between the four nearest pixels; 0.5 is the middle of the first. */
export function sampled(
  { data, width, height }: Pixels,
  x: number,
  y: number,
  channel: number,
): number {
  const u = Math.max(0, Math.min(width - 1.001, x - 0.5))
  const v = Math.max(0, Math.min(height - 1.001, y - 0.5))
  const [left, top] = [u | 0, v | 0]
  const [fx, fy] = [u - left, v - top]
  const one = (top * width + left) * 3 + channel
  const below = one + width * 3
  const high = data[one]! * (1 - fx) + data[one + 3]! * fx
  const low = data[below]! * (1 - fx) + data[below + 3]! * fx
  return high * (1 - fy) + low * fy
}

/**
 * How far from the line colours are compared, px: nearer is its own blur. And further off, in parts of the side: a
 * joint between two tiles is no end of one.
 */
const close = [4, 6, 8]
const further = 0.06

/** The median, over places of a side, of how far what lies within differs from what lies beyond. */
function contrastAt(
  picture: Pixels,
  places: readonly Point[],
  out: Point,
  aside: readonly number[],
): number {
  const differences = places.map(([x, y]) => {
    let sum = 0
    for (let c = 0; c < 3; c += 1) {
      let difference = 0
      for (const far of aside) {
        difference +=
          sampled(picture, x + far * out[0], y + far * out[1], c) -
          sampled(picture, x - far * out[0], y - far * out[1], c)
      }
      sum += (difference / aside.length) ** 2
    }
    return Math.sqrt(sum)
  })
  return differences.sort((a, b) => a - b)[differences.length >> 1]!
}
