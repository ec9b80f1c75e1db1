import { type Clusters, clustersOf } from './clusters.ts'
import { type Fitted, type Surface, surfaceThrough } from './fit.ts'
import type { LabPlanes } from './planes.ts'

/** What is known of the ground that a garment lies on, from the edges of the picture. */
export interface Ground {
  readonly clusters: Clusters
  /** For each cluster how much likelier it is in the middle than at the edges (logarithm). */
  readonly inward: Float32Array
  /** Pixels of the rim that are surely not a garment cut off by it: 1. */
  readonly seeds: Uint8Array
  /** The ground's lightness and colours as the light falls on it, and how far it strays from that. */
  readonly surface: { readonly l: Surface; readonly a: Surface; readonly b: Surface }
  readonly spread: { readonly l: number; readonly ab: number }
}

const most = 24
/** Of the shorter side: how broad the rim is, and how far the middle reaches (standard deviation). */
const rim = 0.035
const heart = 0.2

/** Reads the ground off the rim of a small picture. */
export function groundOf(planes: LabPlanes): Ground {
  const { width, height } = planes
  const clusters = clustersOf(planes, most)
  const shorter = Math.min(width, height)
  const band = Math.max(2, Math.round(rim * shorter))
  const edge = new Float64Array(clusters.centres.length)
  const middle = new Float64Array(clusters.centres.length)
  for (let y = 0; y < height; y += 1) {
    const dy = (y - height / 2) / (heart * height)
    for (let x = 0; x < width; x += 1) {
      const at = y * width + x
      const cluster = clusters.of[at]!
      if (Math.min(x, y, width - 1 - x, height - 1 - y) < band) edge[cluster]! += 1
      const dx = (x - width / 2) / (heart * width)
      middle[cluster]! += Math.exp(-0.5 * (dx * dx + dy * dy))
    }
  }
  const [edges, middles] = [edge, middle].map((of) => of.reduce((sum, one) => sum + one, 0))
  const inward = Float32Array.from(clusters.centres, (_, n) =>
    Math.log((middle[n]! / middles! + 0.004) / (edge[n]! / edges! + 0.004)),
  )
  const seeds = new Uint8Array(width * height)
  const samples: number[] = []
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      if (Math.min(x, y, width - 1 - x, height - 1 - y) >= band) continue
      const at = y * width + x
      if (inward[clusters.of[at]!]! > 1) continue
      seeds[at] = 1
      if ((x + y) % 3 !== 0) continue
      samples.push(at)
    }
  }
  const x = Float32Array.from(samples, (at) => at % width)
  const y = Float32Array.from(samples, (at) => Math.floor(at / width))
  const through = (from: Float32Array, degree: 1 | 2): Fitted =>
    surfaceThrough({ x, y, value: Float32Array.from(samples, (at) => from[at]!) }, planes, degree)
  const [l, a, b] = [through(planes.l, 2), through(planes.a, 1), through(planes.b, 1)]
  return {
    clusters,
    inward,
    seeds,
    surface: { l: l.at, a: a.at, b: b.at },
    spread: { l: l.spread, ab: Math.hypot(a.spread, b.spread) },
  }
}
