import type { Pixels } from '../cloth.ts'
import { areaOf, type Point } from '../hull.ts'
import { growth } from './homography.ts'
import { placeIn } from './hull-quad.ts'
import { type SheetKind, sheetKinds } from './looked.ts'
import type { Mask } from './outline.ts'
import { labPlanes } from './planes.ts'
import { type Candidate, chosen } from './sheet-choice.ts'
import { cutOfCard, cutOfCorners } from './sheet-corners.ts'
import { alike, roughsIn } from './sheet-find.ts'
import { placeOf } from './sheet-place.ts'
import { type Camera, type Corners, type Pose, poseOf } from './sheet-pose.ts'
import { alikeAround } from './sheet-round.ts'
import { type Sides, sidesOf } from './sheet-sides.ts'

/** A sheet beside a garment, and what it tells of sizes. */
export interface Measured {
  readonly by: SheetKind
  /** Clockwise, px of the picture. */
  readonly corners: readonly Point[]
  /** At the place that was asked for. */
  readonly mmPerPx: number
  /** Nine in ten are off by less, percent. */
  readonly errorPct: number
  readonly pose: Pose
}

/** What a search for a sheet found. */
export interface Searched {
  /** Null where there is none for sure. */
  readonly measured: Measured | null
  /** Corners of a sheet that may have been outlined in the garment's place, clockwise, px of the picture. */
  readonly instead: readonly Point[] | null
}

/** Where a picture is searched at about this many pixels along its longer side. */
const searched = 440

/** A shape must have so much of each side on its line. */
export const leastMet = 0.85
/** One that was outlined with the garment so much: where a side is not met the garment may lie on it. */
const leastMetWith = 0.97
/** And so much contrast to what it lies on, codes of 255; fields of a pattern are as small as cards, and fainter. */
export const leastContrast: Readonly<Record<SheetKind, number>> = { letter: 7, a4: 7, id1: 12 }
/** Corners and focal length must fit this well, chi squared of two degrees of freedom; and with an unusual tilt. */
export const mostCost: Readonly<Record<SheetKind, number>> = { letter: 3, a4: 3, id1: 5 }
const mostOdd = 7.5
/** Another kind must fit so much worse. */
export const clearBy = 6.5
/** Tilts that are usual, radians: few hold a camera more aslant. */
const usualTilt = 0.25
/**
 * A sheet seen more aslant than this is no help, radians. The smaller, the less its shape alone tells how aslant it
 * lies: part of a card can pass for all of one, seen from the side.
 */
const mostTilt: Readonly<Record<SheetKind, number>> = { letter: 0.65, a4: 0.65, id1: 0.5 }
/**
 * What has its colour in more of what lies around it is no card but fields of a check. Paper is not asked: white lies
 * beside white. Where it was outlined with the garment, in more of all around it: a field of the garment's own print.
 */
const mostAlike = { ground: 1 / 8, all: 1 / 64 }
/** So much of a card's corners is cut off at least, mm. */
const leastCut = 0.65 * cutOfCard
/** A scale that may be further off than this is of no use, percent. */
export const mostError = 6
/** A shorter side, px, is too coarse to tell a sheet by. */
export const leastSide = 34
/** Larger and smaller garments than these are none, mm of the longer side of its box. */
const garmentSide = [250, 2000] as const

/**
 * The sheet of paper or the card that lies beside the garment of a mask, with the scale at the garment's middle.
 * None for sure is where none is found, where its sides do not fit a size that is known, where two are found that
 * contradict each other. Pure.
 */
export function searchedFor(picture: Pixels, mask: Mask, camera: Camera): Searched {
  const at = middleOf(mask, picture)
  if (!at) return { measured: null, instead: null }
  const small = shrunk(
    picture,
    Math.max(1, Math.round(Math.max(picture.width, picture.height) / searched)),
  )
  const planes = labPlanes(small.pixels)
  const roughs = roughsIn(planes)
  const found: Candidate[] = []
  const felt: Sides[] = []
  const beside: Sides[] = []
  const instead: Sides[] = []
  const inSmall = ({ corners }: Sides): Point[] =>
    corners.map(([x, y]) => [x / small.by, y / small.by])
  const near = 0.012 * Math.max(picture.width, picture.height)
  for (const { corners } of roughs.filter(({ corners }) => sheetLike(corners)).slice(0, 60)) {
    const large = corners.map(([x, y]): Point => [x * small.by, y * small.by])
    const sides = sidesOf(picture, large, 2.2 * small.by + 2)
    if (!sides || sides.met < leastMet) continue
    if (felt.some((one) => alike(one.corners, sides.corners, near))) continue
    felt.push(sides)
    const place = placeOf(sides.corners, mask, picture)
    const free = place === 'beside' || (place === 'with' && sides.met >= leastMetWith)
    if (free) beside.push(sides)
    if (!fits(sides, picture)) continue
    if (place === 'instead' && kindOf(sides, picture, camera)) instead.push(sides)
    const pose = kindOf(sides, picture, camera, mask)
    if (!pose) continue
    const own = inSmall(sides)
    const isPattern =
      (pose.kind === 'id1' && alikeAround(own, planes, mask) > mostAlike.ground) ||
      (place === 'with' && alikeAround(own, planes) > mostAlike.all)
    const isRound = pose.kind !== 'id1' || hasRoundCorners(picture, sides, pose)
    if (isRound && !isPattern) found.push({ sides, pose, free })
  }
  const best = chosen(found, beside, at)
  const measured = best && measuredBy(best.sides.corners, best.pose, at)
  return {
    measured: measured && measured.errorPct <= mostError ? measured : null,
    instead: instead.toSorted((a, b) => areaOf(b.corners) - areaOf(a.corners))[0]?.corners ?? null,
  }
}

/** Long side in parts of the short one, and how much longer than the side across from it a side may be. */
const [mostLong, mostUneven] = [1.95, 1.5]

/** Whether a rough shape has about the proportions of a sheet seen from above. */
function sheetLike(corners: readonly Point[]): boolean {
  const [a, b, c, d] = corners.map(([x, y], n) => {
    const [u, v] = corners[(n + 1) % 4]!
    return Math.hypot(u - x, v - y)
  }) as [number, number, number, number]
  const even = (one: number, other: number): boolean =>
    Math.max(one, other) < mostUneven * Math.min(one, other)
  const long = Math.max(a + c, b + d) / Math.min(a + c, b + d)
  return even(a, c) && even(b, d) && long < mostLong
}

/** Nine in ten of what is spread evenly lie within so many standard deviations. */
const nineInTen = 1.645

export function measuredBy(corners: readonly Point[], pose: Pose, at: Point): Measured {
  return {
    by: pose.kind,
    corners,
    mmPerPx: growth(pose.back, at),
    errorPct: 100 * nineInTen * pose.unsure(at),
    pose,
  }
}

/** Whether a shape lies in the picture, as large as a sheet must be: the fields of a pattern may be smaller. */
function fits({ corners }: Sides, { width, height }: Pixels): boolean {
  const inside = corners.every(([x, y]) => x > 2 && y > 2 && x < width - 2 && y < height - 2)
  const large = areaOf(corners) > leastSide ** 2 * 1.3
  return inside && large
}

/** The poses of a sheet of that kind with these corners, standing and lying, the likelier first. */
export const posesOf = (
  corners: readonly Point[],
  kind: SheetKind,
  camera: Camera,
  by?: Corners,
): Pose[] =>
  [true, false]
    .map((upright) => poseOf(corners, kind, upright, camera, by))
    .filter((pose) => pose !== null)
    .sort((a, b) => a.cost - b.cost)

/** The one size that the corners fit, of those that can be beside a garment of that mask; none where two do. */
function kindOf(
  { corners, contrast }: Sides,
  picture: Pixels,
  camera: Camera,
  mask?: Mask,
): Pose | null {
  const kinds = paperLike(picture, corners) ? sheetKinds : (['id1'] as const)
  const poses = kinds
    .flatMap((kind) => posesOf(corners, kind, camera).slice(0, 1))
    .filter((pose) => pose.tilt < mostTilt[pose.kind] && (!mask || plausible(pose, mask, picture)))
  const odd = ({ cost, tilt }: Pose): number => cost + (tilt / usualTilt) ** 2
  const [best, next] = poses.sort((a, b) => odd(a) - odd(b))
  if (!best || best.cost > mostCost[best.kind] || odd(best) > mostOdd) return null
  if (contrast < leastContrast[best.kind]) return null
  return next && odd(next) < odd(best) + clearBy ? null : best
}

/** Whether a shape's corners are cut off about as a card's are: fields of a print and checks are sharp. */
const hasRoundCorners = (picture: Pixels, { corners }: Sides, pose: Pose): boolean =>
  (cutOfCorners(picture, corners, pose) ?? 0) > leastCut

/** Whether what lies within is about as light as anything, without colour, and even: as blank paper is. */
function paperLike(picture: Pixels, corners: readonly Point[]): boolean {
  const side = 12
  const data = new Uint8Array(side * side * 3)
  for (let n = 0; n < side * side; n += 1) {
    const [u, v] = [
      0.08 + (0.84 * (n % side)) / (side - 1),
      0.08 + (0.84 * Math.floor(n / side)) / (side - 1),
    ]
    const [x, y] = placeIn(corners, u, v)
    const at = (Math.floor(y) * picture.width + Math.floor(x)) * 3
    data.set(picture.data.subarray(at, at + 3), n * 3)
  }
  const { l, a, b } = labPlanes({ data, width: side, height: side, channels: 3 })
  const sorted = l.toSorted()
  const middle = sorted[sorted.length >> 1]!
  const even = sorted[Math.floor(0.9 * sorted.length)]! - sorted[Math.floor(0.1 * sorted.length)]!
  const colour = Math.hypot(mean(a), mean(b))
  return middle > 35 && even < 22 && colour < 28
}

const mean = (of: Float32Array): number => of.reduce((sum, one) => sum + one, 0) / of.length

/** Whether a garment of that scale is one that people wear. */
function plausible(pose: Pose, mask: Mask, { width, height }: Pixels): boolean {
  const at = middleOf(mask, { width, height })!
  let [left, right, top, bottom] = [mask.width, 0, mask.height, 0]
  for (let n = 0; n < mask.data.length; n += 1) {
    if (!mask.data[n]) continue
    const [x, y] = [n % mask.width, Math.floor(n / mask.width)]
    left = Math.min(left, x)
    right = Math.max(right, x)
    top = Math.min(top, y)
    bottom = Math.max(bottom, y)
  }
  const longer = Math.max(right - left, bottom - top) * (width / mask.width) * growth(pose.back, at)
  return longer > garmentSide[0] && longer < garmentSide[1]
}

/** The middle of the mask's pixels, in the picture. */
export function middleOf(
  mask: Mask,
  { width, height }: { width: number; height: number },
): Point | null {
  let [x, y, count] = [0, 0, 0]
  for (let n = 0; n < mask.data.length; n += 1) {
    if (!mask.data[n]) continue
    x += (n % mask.width) + 0.5
    y += Math.floor(n / mask.width) + 0.5
    count += 1
  }
  return count === 0
    ? null
    : [(x / count) * (width / mask.width), (y / count) * (height / mask.height)]
}

/** The picture with each `by` by `by` pixels gathered into one. */
function shrunk({ data, width, height }: Pixels, by: number): { pixels: Pixels; by: number } {
  const [w, h] = [Math.floor(width / by), Math.floor(height / by)]
  const small = new Uint8Array(w * h * 3)
  const sums = new Float32Array(w * 3)
  for (let y = 0; y < h; y += 1) {
    sums.fill(0)
    for (let row = y * by; row < (y + 1) * by; row += 1) {
      for (let x = 0, from = row * width * 3; x < w; x += 1) {
        for (let n = 0; n < by; n += 1, from += 3) {
          sums[3 * x]! += data[from]!
          sums[3 * x + 1]! += data[from + 1]!
          sums[3 * x + 2]! += data[from + 2]!
        }
      }
    }
    for (let n = 0; n < w * 3; n += 1) small[y * w * 3 + n] = sums[n]! / (by * by) + 0.5
  }
  return { pixels: { data: small, width: w, height: h, channels: 3 }, by }
}
