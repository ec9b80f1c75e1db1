import { areaOf, type Point } from '../hull.ts'
import type { Mask } from './outline.ts'

interface Size {
  readonly width: number
  readonly height: number
}

/**
 * Of a sheet's area at most so much lies in the garment, or at least so much where it was outlined with it. Between
 * the two the garment lies on the sheet.
 */
const inside = { most: 0.012, least: 0.8 }
/** How far around a sheet is looked for the garment, in parts of its sides, and how much of that may be garment. */
const rim = 0.12
const mostAround = 0.5
/** A sheet that has more of the outline within it leaves no garment beside it. */
const mostOfAll = 0.6
/** How finely a sheet and what is around it are asked. */
const steps = 24

/**
 * Where a shape lies by an outline: clear of it; a sheet that was outlined with the garment; one that was outlined in
 * its place, or a garment that is itself shaped so; a print on it, or what it lies on in part.
 */
export type Place = 'beside' | 'with' | 'instead' | 'touched'

/**
 * What was outlined with the garment or in its place has the ground around it for the most part; what is printed on
 * cloth or sewn to it has cloth around it. `size`: of the picture that corners are told in, px. Pure.
 */
export function placeOf(corners: readonly Point[], mask: Mask, size: Size): Place {
  const covered = shareIn(corners, mask, size, 0)
  if (covered <= inside.most) return 'beside'
  if (shareIn(corners, mask, size, rim) > mostAround) return 'touched'
  const common = (covered * areaOf(corners)) / (size.width * size.height)
  if (common > mostOfAll * filled(mask)) return 'instead'
  return covered < inside.least ? 'touched' : 'with'
}

/** The share of a picture that its mask covers. */
const filled = ({ data }: Mask): number =>
  data.reduce((sum, one) => sum + one, 0) / Math.max(1, data.length)

/** The share of a shape that lies in the mask, or with a `rim` that of what lies around it so far. */
function shareIn(
  corners: readonly Point[],
  mask: Mask,
  { width, height }: Size,
  rim: number,
): number {
  const [a, b, c, d] = corners as [Point, Point, Point, Point]
  const place = (n: number): number => -rim + ((1 + 2 * rim) * n) / (steps - 1)
  let [covered, asked] = [0, 0]
  for (let n = 0; n < steps * steps; n += 1) {
    const [u, v] = [place(n % steps), place(Math.floor(n / steps))]
    if (rim > 0 && Math.min(u, v) > 0 && Math.max(u, v) < 1) continue
    const at = (k: 0 | 1) => (1 - v) * ((1 - u) * a[k] + u * b[k]) + v * ((1 - u) * d[k] + u * c[k])
    const [x, y] = [
      Math.floor((at(0) * mask.width) / width),
      Math.floor((at(1) * mask.height) / height),
    ]
    asked += 1
    if (x >= 0 && y >= 0 && x < mask.width && y < mask.height)
      covered += mask.data[y * mask.width + x] ? 1 : 0
  }
  return covered / asked
}
