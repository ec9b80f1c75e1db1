import type { Pixels } from '../cloth.ts'
import type { Point } from '../hull.ts'
import { taken } from './homography.ts'
import type { Pose } from './sheet-pose.ts'
import { sampled } from './sheet-sides.ts'

/** Corners of a card are arcs of 3.18 mm (ISO/IEC 7810, ID-1): so much of them is cut off as `cutOfCorners` tells it. */
export const cutOfCard = (Math.SQRT2 - 1) * 3.18

/**
 * Along the line that halves a corner, mm inwards from where its sides meet: where the ground is asked for its
 * colour, where the sheet, and between which the one gives way to the other.
 */
const ground = [-4.4, -3.7, -3]
const sheet = [5, 5.7, 6.4, 7.1]
const [from, to, step] = [-3, 5, 0.25]
/** What differs less, codes of 255, tells no edge. */
const leastContrast = 6

/**
 * How much of the corners of a shape is cut off, mm along the line that halves each: of sharp ones nothing, of round
 * ones `(√2 - 1)` times their radius, of blurred ones more. The median of the corners that can be told; null where
 * fewer than three can. `corners`: px, those of that pose. Pure.
 */
export function cutOfCorners(
  picture: Pixels,
  corners: readonly Point[],
  pose: Pose,
): number | null {
  const cuts = corners
    .map((corner) => cutAt(picture, taken(pose.back, corner), pose))
    .filter((cut) => cut !== null)
    .sort((a, b) => a - b)
  if (cuts.length < 3) return null
  return (cuts[(cuts.length - 1) >> 1]! + cuts[cuts.length >> 1]!) / 2
}

type Colour = readonly [red: number, green: number, blue: number]

/** The same of one corner, which lies at that point of the sheet's plane. */
function cutAt(picture: Pixels, [x, y]: Point, pose: Pose): number | null {
  const at = (inwards: number): Colour => {
    const aside = inwards / Math.SQRT2
    const [u, v] = taken(pose.forth, [x - Math.sign(x) * aside, y - Math.sign(y) * aside])
    return [sampled(picture, u, v, 0), sampled(picture, u, v, 1), sampled(picture, u, v, 2)]
  }
  const out = meanOf(ground.map(at))
  const way = less(meanOf(sheet.map(at)), out)
  const contrast = dot(way, way)
  if (contrast < leastContrast ** 2) return null
  let onSheet = 0
  for (let inwards = from; inwards < to; inwards += step) {
    const part = dot(way, less(at(inwards + step / 2), out)) / contrast
    onSheet += step * Math.max(0, Math.min(1, part))
  }
  return to - onSheet
}

const less = (one: Colour, other: Colour): Colour => [
  one[0] - other[0],
  one[1] - other[1],
  one[2] - other[2],
]
const dot = (one: Colour, other: Colour): number =>
  one[0] * other[0] + one[1] * other[1] + one[2] * other[2]
const meanOf = (all: readonly Colour[]): Colour => {
  const sum = (n: 0 | 1 | 2): number => all.reduce((total, one) => total + one[n], 0) / all.length
  return [sum(0), sum(1), sum(2)]
}
