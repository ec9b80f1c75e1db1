import { areaOf, type Point } from '../hull.ts'
import type { Mask } from './outline.ts'

/** The size of the picture that corners are told in, px. */
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
/** What is more of the outline than this is the garment itself, however alike to a sheet. */
const mostOfAll = 0.6
/** How finely a sheet and what is around it are asked. */
const steps = 24

/**
 * Whether a sheet was outlined with the garment although the ground is most of what lies around it. What is printed
 * on cloth or sewn to it has cloth around it.
 */
export const isTaken = (corners: readonly Point[], mask: Mask, size: Size): boolean =>
  shareIn(corners, mask, size, 0) >= inside.least &&
  shareIn(corners, mask, size, rim) <= mostAround &&
  areaOf(corners) / (size.width * size.height) <= mostOfAll * filled(mask)

/** Whether a sheet lies beside the garment, clear of what was outlined or taken for a part of it. */
export const isBeside = (corners: readonly Point[], mask: Mask, size: Size): boolean =>
  shareIn(corners, mask, size, 0) <= inside.most || isTaken(corners, mask, size)

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
