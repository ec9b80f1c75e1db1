import { areaOf, isWithin, type Point } from '../hull.ts'
import { growth } from './homography.ts'
import type { Pose } from './sheet-pose.ts'
import type { Sides } from './sheet-sides.ts'

/** A shape that could be a sheet. */
export interface Candidate {
  readonly sides: Sides
  readonly pose: Pose
  /** It lies beside the garment. */
  readonly free: boolean
}

/** So many shapes of about the same size, none much fainter, are fields of a pattern: checks, tiles. */
const fields = { count: 3, size: 1.4, fainter: 3 }
/** So many, down to this part of a shape's size, are the fields that it is put together from. */
const parts = { count: 7, size: 0.15, fainter: 1.5 }

/** Whether a shape is one of many of its kind, or some of those together. */
function isField({ corners, contrast }: Sides, all: readonly Sides[]): boolean {
  const size = areaOf(corners)
  const alike = (least: number, fainter: number): number =>
    all.filter((one) => {
      const larger = areaOf(one.corners) / size
      return larger > least && larger < fields.size && one.contrast * fainter > contrast
    }).length
  // It is one of them itself.
  return (
    alike(1 / fields.size, fields.fainter) > fields.count ||
    alike(parts.size, parts.fainter) > parts.count
  )
}

/** A corner lies in a shape that it is no further off than this, px. */
const near = 3

/** Whether a shape is a part of a larger one that could be a sheet as well: a field of a card, a picture on paper. */
function within(one: Candidate, all: readonly Candidate[]): boolean {
  return all.some(({ sides: { corners } }) => {
    if (areaOf(corners) < 1.15 * areaOf(one.sides.corners)) return false
    const inside = one.sides.corners.filter((point) => isWithin(point, corners, near))
    return inside.length >= 3
  })
}

/** More that could be sheets are tiles, or some other pattern. */
const mostSheets = 2
/** Beside what stands out so many times more, what fits worse than this is a piece of a pattern. */
const pattern = { fainter: 3, cost: 1 }

/**
 * The one that is a sheet beside the garment, or the surest of several that agree about a point; two that contradict
 * each other are none. `beside`: all shapes with sides that lie beside the garment; those of its own pattern tell nothing
 * of what lies there.
 */
export function chosen(
  all: readonly Candidate[],
  beside: readonly Sides[],
  at: Point,
): Candidate | null {
  const found = all.filter((one) => one.free && !within(one, all) && !isField(one.sides, beside))
  const strongest = Math.max(...found.map(({ sides }) => sides.contrast))
  const sorted = found
    .filter(
      ({ sides, pose }) => sides.contrast * pattern.fainter > strongest || pose.cost < pattern.cost,
    )
    .sort((a, b) => a.pose.cost - b.pose.cost)
  const [best] = sorted
  if (!best || sorted.length > mostSheets) return null
  const scale = growth(best.pose.back, at)
  const agree = sorted.every(({ pose }) => Math.abs(Math.log(growth(pose.back, at) / scale)) < 0.06)
  return agree ? best : null
}
