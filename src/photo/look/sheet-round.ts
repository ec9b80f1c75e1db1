import type { Point } from '../hull.ts'
import { placeIn } from './hull-quad.ts'
import type { Mask } from './outline.ts'
import { type LabPlanes, quantile } from './planes.ts'

/** How far around a shape is looked, and how near to it not, where its shadow lies: in parts of its sides. */
const [far, rim] = [2, 0.12]
/** The middle of a shape: without its round corners and its edge. */
const middle = 0.15
/** How finely a shape and what is around it are asked. */
const steps = { within: 12, around: 60 }
/** Colours no further apart are the same, CIE 1976. */
const same = 3

/**
 * The share, 0 to 1, of what lies around a shape that has its colour: of a field of a check half or a third, of a
 * card nothing. What the mask covers is left out. `corners`: in px of the planes. Pure.
 */
export function alikeAround(corners: readonly Point[], planes: LabPlanes, mask?: Mask): number {
  const { width, height } = planes
  const at = (u: number, v: number): number => {
    const [x, y] = placeIn(corners, u, v).map(Math.floor) as [number, number]
    return x < 0 || y < 0 || x >= width || y >= height ? -1 : y * width + x
  }
  const leftOut = (n: number): boolean => {
    if (!mask) return false
    const x = Math.floor((((n % width) + 0.5) * mask.width) / width)
    const y = Math.floor(((Math.floor(n / width) + 0.5) * mask.height) / height)
    return mask.data[y * mask.width + x] === 1
  }
  const inside = gridOf(steps.within, middle, 1 - middle)
    .map(([u, v]) => at(u, v))
    .filter((n) => n >= 0)
  const outside = gridOf(steps.around, -far, 1 + far)
    .filter(([u, v]) => Math.min(u, v) < -rim || Math.max(u, v) > 1 + rim)
    .map(([u, v]) => at(u, v))
    .filter((n) => n >= 0 && !leftOut(n))
  if (inside.length === 0 || outside.length === 0) return 0
  const own = [planes.l, planes.a, planes.b].map((plane) =>
    quantile(
      Float32Array.from(inside, (n) => plane[n]!),
      0.5,
    ),
  ) as [number, number, number]
  const alike = outside.filter(
    (n) => Math.hypot(planes.l[n]! - own[0], planes.a[n]! - own[1], planes.b[n]! - own[2]) <= same,
  )
  return alike.length / outside.length
}

/** Places from one to the other, both ways. */
const gridOf = (count: number, from: number, to: number): Point[] =>
  Array.from({ length: count * count }, (_, n) => {
    const part = (at: number): number => from + ((to - from) * (at + 0.5)) / count
    return [part(n % count), part(Math.floor(n / count))]
  })
