import { areaOf, type Point } from '../hull.ts'
import { placeIn } from './hull-quad.ts'
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
/** What has more of the outline beyond two sides across from each other is a piece of it: a stripe of a sleeve. */
const mostAcross = 0.3
/** A sheet that has more of the outline within it leaves no garment beside it. */
const mostOfAll = 0.6
/** How finely a sheet and what is around it are asked. */
const steps = 30

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
  const within = (u: number, v: number): boolean => Math.min(u, v) >= 0 && Math.max(u, v) <= 1
  const share = (asks: Asks): number => shareWhere(asks, corners, mask, size)
  const covered = share(within)
  if (covered <= inside.most) return 'beside'
  if (share((u, v) => !within(u, v)) > mostAround) return 'touched'
  const common = (covered * areaOf(corners)) / (size.width * size.height)
  if (common > mostOfAll * filled(mask)) return 'instead'
  const across = Math.max(
    Math.min(
      share((u, v) => u < 0 && within(0, v)),
      share((u, v) => u > 1 && within(0, v)),
    ),
    Math.min(
      share((u, v) => v < 0 && within(u, 0)),
      share((u, v) => v > 1 && within(u, 0)),
    ),
  )
  return covered < inside.least || across > mostAcross ? 'touched' : 'with'
}

/** The share of a picture that its mask covers. */
const filled = ({ data }: Mask): number =>
  data.reduce((sum, one) => sum + one, 0) / Math.max(1, data.length)

/** Whether a place counts: 0 to 1 along two sides of a shape, below and above them beyond it. */
type Asks = (u: number, v: number) => boolean

/** The share of a shape and its rim that lies in the mask, of the places that count. */
function shareWhere(
  asks: Asks,
  corners: readonly Point[],
  mask: Mask,
  { width, height }: Size,
): number {
  const place = (n: number): number => -rim + ((1 + 2 * rim) * (n + 0.5)) / steps
  let [covered, asked] = [0, 0]
  for (let n = 0; n < steps * steps; n += 1) {
    const [u, v] = [place(n % steps), place(Math.floor(n / steps))]
    if (!asks(u, v)) continue
    const at = placeIn(corners, u, v)
    const [x, y] = [
      Math.floor((at[0] * mask.width) / width),
      Math.floor((at[1] * mask.height) / height),
    ]
    asked += 1
    if (x >= 0 && y >= 0 && x < mask.width && y < mask.height)
      covered += mask.data[y * mask.width + x] ? 1 : 0
  }
  return covered / asked
}
