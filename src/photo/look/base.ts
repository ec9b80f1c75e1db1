import { clustersOf } from './clusters.ts'
import { type Fitted, surfaceThrough } from './fit.ts'
import { grown, type LabPlanes, marked } from './planes.ts'

/** A garment's cloth apart from what is printed on it. */
export interface Base {
  /** 1 well within the garment: its rim, with hems and shadows, is left out. */
  readonly inner: Uint8Array
  readonly l: Fitted
  readonly a: Fitted
  readonly b: Fitted
  /** How each pixel's lightness differs from the base in that place. */
  readonly offL: Float32Array
  /** How its colour differs, were the base lit as the pixel is: both of CIELAB. */
  readonly offA: Float32Array
  readonly offB: Float32Array
}

const most = 10
/** Pixels that are near the main colour count for the base: in lightness folds make, in colour they do not. */
const near = { l: 18, ab: 8 }
/** Samples at most, and how far within the rim the inner part begins, of the shorter side. */
const samples = 4000
const rim = 0.035

/** The base colour and how the light falls on it, from the pixels of a straightened garment. */
export function baseOf(planes: LabPlanes, mask: Uint8Array): Base {
  const { width, height } = planes
  const inner = innerOf(mask, width, height)
  const { of, centres } = clustersOf(planes, most, { weight: inner })
  const main = mainCentre(centres)
  const step = Math.max(1, Math.round((width * height) / samples / 2))
  const taken: number[] = []
  for (let at = 0; at < inner.length; at += step) {
    if (!inner[at]) continue
    const centre = centres[of[at]!]!
    if (isNear(centre, main)) taken.push(at)
  }
  const x = Float32Array.from(taken, (at) => at % width)
  const y = Float32Array.from(taken, (at) => Math.floor(at / width))
  const through = (from: Float32Array, degree: 1 | 2): Fitted =>
    surfaceThrough({ x, y, value: Float32Array.from(taken, (at) => from[at]!) }, planes, degree)
  const [l, a, b] = [through(planes.l, 2), through(planes.a, 1), through(planes.b, 1)]
  const [offL, offA, offB] = [0, 0, 0].map(() => new Float32Array(width * height))
  for (let v = 0, at = 0; v < height; v += 1) {
    for (let u = 0; u < width; u += 1, at += 1) {
      if (!mask[at]) continue
      const base = l.at(u, v)
      // Less light takes lightness + 16 and both colours down by one factor (CIE 15:2004: all three go with
      // the cube root), so that a shadow alone leaves no difference of colour.
      const lit = Math.max(0, planes.l[at]! + 16) / Math.max(4, base + 16)
      offL![at] = planes.l[at]! - base
      offA![at] = planes.a[at]! - a.at(u, v) * lit
      offB![at] = planes.b[at]! - b.at(u, v) * lit
    }
  }
  return { inner, l, a, b, offL: offL!, offA: offA!, offB: offB! }
}

export function innerOf(mask: Uint8Array, width: number, height: number): Uint8Array {
  const radius = Math.max(1, Math.round(rim * Math.min(width, height)))
  const outside = marked(mask.length, (at) => mask[at] === 0)
  // Beyond the picture there is no garment either.
  const near = grown(outside, width, height, radius)
  const inner = new Uint8Array(mask.length)
  for (let y = radius; y < height - radius; y += 1) {
    for (let x = radius; x < width - radius; x += 1) {
      const at = y * width + x
      inner[at] = near[at] ? 0 : 1
    }
  }
  return inner
}

interface Colour {
  readonly l: number
  readonly a: number
  readonly b: number
  readonly count: number
}

const isNear = (one: Colour, other: Colour): boolean =>
  Math.abs(one.l - other.l) < near.l && Math.hypot(one.a - other.a, one.b - other.b) < near.ab

/** The centre that stands for most pixels together with those near it. */
function mainCentre(centres: readonly Colour[]): Colour {
  const around = (one: Colour): number =>
    centres.reduce((sum, other) => sum + (isNear(one, other) ? other.count : 0), 0)
  return centres.reduce((best, one) => (around(one) > around(best) ? one : best))
}
