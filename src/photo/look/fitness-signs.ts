import type { Pixels } from '../cloth.ts'
import type { Frame } from './frame.ts'
import { shapeSigns } from './garment-shape.ts'
import type { Outline } from './outline.ts'
import type { LabPlanes } from './planes.ts'
import { fourSided } from './sheet-shape.ts'

/**
 * What tells whether a photo is fit to be read: numbers for the net, in a fixed order. `picture` is the larger,
 * on which edges are looked at, `planes` the small one that was outlined.
 */
export function fitnessSigns(
  picture: Pixels,
  planes: LabPlanes,
  outline: Outline,
  frame: Frame | null,
): number[] {
  return [
    ...edgeSigns(picture),
    ...lightSigns(planes, outline.mask.data),
    ...lieSigns(outline),
    ...frameSigns(outline, frame),
    ...shapeSigns(outline.mask, frame),
  ]
}

/** Pixels apart, of which the nearer tells how sharp the steps are that the further finds. */
const reach = { near: 1, far: 6 }

/** How sharp the strongest edges are: at those a sharp picture has made most of its step within two pixels. */
function edgeSigns({ data, width, height, channels }: Pixels): number[] {
  const counts = new Uint32Array(256)
  const steps: number[] = []
  const along = (at: number, by: number): number => Math.abs(data[at + by]! - data[at - by]!)
  const ways = [channels, channels * width] as const
  for (let y = reach.far; y < height - reach.far; y += 2) {
    for (let x = reach.far; x < width - reach.far; x += 2) {
      const at = (y * width + x) * channels + 1
      const far = Math.max(along(at, ways[0] * reach.far), along(at, ways[1] * reach.far))
      counts[far]! += 1
      if (far > 10) steps.push(at)
    }
  }
  const seen = counts.reduce((sum, one) => sum + one, 0)
  const from = stepFrom(counts, 0.03 * seen)
  const sharp = new Uint32Array(64)
  let [near, far, count] = [0, 0, 0]
  for (const at of steps) {
    const [h, v] = [along(at, ways[0] * reach.far), along(at, ways[1] * reach.far)]
    if (Math.max(h, v) < from) continue
    const way = h >= v ? ways[0] : ways[1]
    const inner = along(at, way * reach.near)
    near += inner
    far += Math.max(h, v)
    count += 1
    sharp[Math.min(63, Math.floor((32 * inner) / Math.max(h, v)))]! += 1
  }
  return [
    near / Math.max(1, far),
    stepFrom(sharp, 0.02 * count) / 32,
    stepFrom(sharp, 0.1 * count) / 32,
    stepFrom(sharp, 0.3 * count) / 32,
    Math.log(from + 1),
    Math.log(near / Math.max(1, count) + 1),
  ]
}

/** The step from which on there are no more than so many. */
function stepFrom(counts: Uint32Array, most: number): number {
  let left = most
  let step = counts.length
  while (step > 0 && left >= 0) {
    step -= 1
    left -= counts[step]!
  }
  return step
}

const shares = [0.01, 0.05, 0.25, 0.5, 0.75, 0.95, 0.99] as const

function lightSigns({ l }: LabPlanes, mask: Uint8Array): number[] {
  const sorted = l.toSorted()
  const garment = l.filter((_, at) => mask[at] === 1).sort()
  const at = (values: Float32Array, share: number): number =>
    values[Math.floor(share * (values.length - 1))] ?? 0
  const beyond = (values: Float32Array, from: number): number =>
    values.length === 0 ? 0 : values.filter((one) => one > from).length / values.length
  return [
    ...shares.map((share) => at(sorted, share) / 20),
    ...[0.05, 0.5, 0.95].map((share) => at(garment, share) / 20),
    Math.sqrt(beyond(sorted, 98)),
    Math.sqrt(beyond(sorted, 99.6)),
    Math.sqrt(beyond(garment, 98)),
    Math.sqrt(beyond(garment, 99.6)),
  ]
}

/** How the garment lies in the picture, and how sure that is. */
function lieSigns({ mask: { width, height, data }, inside }: Outline): number[] {
  let [area, sure, open, unsure, left, right, top, bottom] = [0, 0, 0, 0, width, 0, height, 0]
  const edges = [0, 0, 0, 0]
  for (let y = 0, at = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1, at += 1) {
      if (inside[at]! > 0.1 && inside[at]! < 0.9) unsure += 1
      if (!data[at]) {
        open += inside[at]!
        continue
      }
      area += 1
      sure += inside[at]!
      left = Math.min(left, x)
      right = Math.max(right, x)
      top = Math.min(top, y)
      bottom = y
      if (x < 2) edges[0]! += 1
      if (x >= width - 2) edges[1]! += 1
      if (y < 2) edges[2]! += 1
      if (y >= height - 2) edges[3]! += 1
    }
  }
  const size = width * height
  const shorter = Math.min(width, height)
  const touched = edges.toSorted((a, b) => b - a)
  return [
    Math.sqrt(area / size),
    area === 0 ? 0 : (right - left) / width,
    area === 0 ? 0 : (bottom - top) / height,
    area === 0 ? 0 : Math.max(right - left, bottom - top) / shorter,
    area === 0 ? 0 : sure / area,
    Math.sqrt(open / size),
    Math.sqrt(unsure / size),
    Math.sqrt(unsure / Math.max(1, area)),
    Math.sqrt(touched[0]! / (2 * shorter)),
    Math.sqrt(touched[1]! / (2 * shorter)),
    area === 0 ? 0 : Math.min(left, top, width - 1 - right, height - 1 - bottom) / shorter,
  ]
}

function frameSigns({ mask: { width, data }, ground }: Outline, frame: Frame | null): number[] {
  const shape = frame ? fourSided(Int32Array.from(data), width, 1) : 0
  const area = data.reduce((sum, one) => sum + one, 0)
  return [
    shape,
    frame ? frame.alike : 0,
    frame ? area / (frame.across * frame.along) : 0,
    frame ? Math.log(frame.across / frame.along) : 0,
    Math.log(ground.spread.l + 0.5),
    Math.log(ground.spread.ab + 0.5),
  ]
}
