import type { FailureCode } from '../../base/failures.ts'
import type { Pixels } from '../cloth.ts'
import { areaOf, hull, type Point, turnOf } from '../hull.ts'
import { type SheetKind, sheetKinds } from './looked.ts'
import {
  clearBy,
  leastContrast,
  leastMet,
  leastSide,
  type Measured,
  measuredBy,
  mostCost,
  mostError,
  posesOf,
} from './scale.ts'
import { byHand, type Camera, felt, type Pose } from './sheet-pose.ts'
import { sidesOf } from './sheet-sides.ts'

/** A sheet whose corners a person marked on a photo. */
export interface MarkedSheet {
  /** What they say it is. */
  readonly sheet: SheetKind
  /** In any order, in shares of the upright picture's width and height. */
  readonly corners: readonly Point[]
  /** How far off a corner may be: standard deviation, in parts of the picture's longer side. */
  readonly off: number
}

/** How far off corners are that were moved under a magnifying glass, and those that were tapped on a small picture. */
export const marksOff = { fine: 1 / 1000, coarse: 4 / 1000 } as const

/** Why a sheet is not measured by; `other`: the one that the corners fit. */
export interface NoSheet {
  readonly code: Extract<
    FailureCode,
    | 'corners_incomplete'
    | 'corners_no_sheet'
    | 'corners_not_that_sheet'
    | 'corners_other_sheet'
    | 'sheet_small'
    | 'sheet_unsure'
  >
  readonly other?: SheetKind
}

/** Corners and focal length must fit a sheet that a person names this well, chi squared. */
const mostMarkedCost = 12
/** And lie no more aslant, radians. */
const mostMarkedTilt = 0.8
/**
 * Four corners whose smallest triangle is a smaller part of all they enclose are three; those that enclose a smaller
 * part of the square over their longest way lie in a line.
 */
const least = { triangle: 0.1, square: 0.02 } as const
/** Edges are felt for within so many times what a corner may be off, but in no more of the shortest side. */
const reach = { times: 5, part: 0.15 } as const

/**
 * The scale by a sheet whose corners a person marked: by its edges where they are felt near the marks, else by the
 * marks alone. `at`: where the scale is asked for, px. Corners in any order go clockwise. Pure.
 */
export function scaleByMarks(
  picture: Pixels,
  marked: MarkedSheet,
  camera: Camera,
  at: Point,
): Measured | NoSheet {
  const px = marked.off * Math.max(picture.width, picture.height)
  const placed = marked.corners.map(([x, y]): Point => [x * picture.width, y * picture.height])
  const corners = aroundOf(placed)
  if ('code' in corners) return corners
  if (areaOf(corners) < leastSide ** 2) return { code: 'sheet_small' }
  const far = Math.min(reach.times * px, reach.part * shortestOf(corners))
  const sides = sidesOf(picture, corners, far)
  const isNear = (one: Point, n: number) => apart(one, corners[n]!) < 1.5 * far
  // An edge fainter than a sheet's own may be its shadow's, or that of something printed on it.
  const isClear = sides && sides.met >= leastMet && sides.contrast >= leastContrast[marked.sheet]
  if (isClear && sides.corners.every(isNear)) {
    const byEdges = kindAs(marked.sheet, sides.corners, camera)
    if (byEdges.code === 'corners_other_sheet') return byEdges
    if (byEdges.pose && byEdges.pose.cost <= mostCost[marked.sheet])
      return sureEnough(measuredBy(sides.corners, byEdges.pose, at))
  }
  const byMarks = kindAs(marked.sheet, corners, camera, px)
  return byMarks.pose ? sureEnough(measuredBy(corners, byMarks.pose, at)) : byMarks
}

const apart = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1])

const shortestOf = (corners: readonly Point[]): number =>
  Math.min(...corners.map((corner, n) => apart(corner, corners[(n + 1) % corners.length]!)))

const sureEnough = (measured: Measured): Measured | NoSheet =>
  measured.errorPct <= mostError ? measured : { code: 'sheet_unsure' }

/** Clockwise as pictures are seen: whoever taps in another order means the same four. */
function aroundOf(corners: readonly Point[]): readonly Point[] | NoSheet {
  if (corners.length !== 4) return { code: 'corners_incomplete' }
  if (!corners.flat().every(Number.isFinite)) return { code: 'corners_no_sheet' }
  const around = hull(corners)
  const triangles = around.map((corner, n) =>
    Math.abs(turnOf(around.at(n - 1)!, corner, around[(n + 1) % around.length]!)),
  )
  const longest = Math.max(...around.flatMap((one) => around.map((other) => apart(one, other))))
  const area = areaOf(around)
  return around.length === 4 &&
    Math.min(...triangles) / 2 > least.triangle * area &&
    area > least.square * longest ** 2
    ? around
    : { code: 'corners_no_sheet' }
}

type Fits = { readonly pose: Pose; readonly code?: never } | (NoSheet & { readonly pose?: never })

/** The pose of that sheet; refused where none fits, or another sheet fits clearly better. */
function kindAs(
  sheet: SheetKind,
  corners: readonly Point[],
  camera: Camera,
  px: number | null = null,
): Fits {
  const by = px === null ? felt : byHand(px)
  const poses = sheetKinds
    .flatMap((kind) => posesOf(corners, kind, camera, by).slice(0, 1))
    .filter(({ cost, tilt }) => cost <= mostMarkedCost && tilt < mostMarkedTilt)
    .toSorted((a, b) => a.cost - b.cost)
  const [best] = poses
  const pose = poses.find(({ kind }) => kind === sheet)
  if (pose && pose.cost <= best!.cost + clearBy) return { pose }
  return best
    ? { code: 'corners_other_sheet', other: best.kind }
    : { code: 'corners_not_that_sheet' }
}
