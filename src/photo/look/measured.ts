import type { Pixels } from '../cloth.ts'
import type { Point } from '../hull.ts'
import { graphicRim } from './graphic-rim.ts'
import type { Seen } from './look.ts'
import type { Look, SheetKind } from './looked.ts'
import { type MarkedSheet, type NoSheet, scaleByMarks } from './marked-sheet.ts'
import { type Measured, middleOf, searchedFor } from './scale.ts'
import type { Camera } from './sheet-pose.ts'
import { sizeOf } from './size.ts'

/** Sizes are told by a scale that is no further off than this, percent. */
const mostOff: Readonly<Record<SheetKind, number>> = { letter: 3, a4: 3, id1: 5 }

/** By edges that are blurred or burnt a scale is taken to be so many times further off: assumed, not measured. */
const unfitOff = 2

/** What a sheet tells of a photo. */
export type Sizes = Pick<Look, 'scale' | 'size'>

const nothing: Sizes = { scale: null, size: null }

/** The same, and corners of what may have been outlined in the garment's place, in shares of both sides. */
export interface MeasuredIn {
  readonly sizes: Sizes
  readonly instead: readonly Point[] | null
}

/**
 * What a sheet beside the garment tells of its size; nothing where none lies there for sure. `picture`: the photo
 * large enough to feel for a sheet's sides, as seen by that camera. Pure.
 */
export function measuredIn(picture: Pixels, seen: Seen, camera: Camera): MeasuredIn {
  const { measured, instead } = searchedFor(picture, seen.mask, camera)
  const { width, height } = picture
  // A scale is one at the garment's middle, which is not known of a half of it, nor where none may be.
  const { problems } = seen.look.fitness
  const isThere = seen.garment && !problems.includes('cut-off') && !problems.includes('no-garment')
  return {
    sizes: measured && isThere ? surelySized(measured, picture, seen) : nothing,
    instead: instead?.map(([x, y]) => [x / width, y / height]) ?? null,
  }
}

function surelySized(found: Measured, picture: Pixels, seen: Seen): Sizes {
  const { ok } = seen.look.fitness
  const measured = ok ? found : { ...found, errorPct: unfitOff * found.errorPct }
  // A photo that is unfit is asked for again: where its sheet lies is told, by a blurred or burnt rim no size is.
  return sizesBy(measured, picture, seen, ok && measured.errorPct <= mostOff[measured.by])
}

/** The same by a sheet whose corners a person marked; its error is told with it, for somebody to weigh. Pure. */
export function measuredByMarks(
  picture: Pixels,
  seen: Seen,
  camera: Camera,
  marked: MarkedSheet,
): Sizes | NoSheet {
  const at = middleOf(seen.mask, picture) ?? [picture.width / 2, picture.height / 2]
  const measured = scaleByMarks(picture, marked, camera, at)
  return 'code' in measured ? measured : sizesBy(measured, picture, seen, true)
}

function sizesBy(
  measured: Measured,
  picture: Pixels,
  { look, mask, inside, garment }: Seen,
  isSure: boolean,
): Sizes {
  const by = look.width / picture.width
  const graphic = garment && look.graphic ? graphicRim(garment) : []
  return {
    scale: {
      by: measured.by,
      mmPerPx: measured.mmPerPx / by,
      errorPct: measured.errorPct,
      corners: measured.corners.map(([x, y]) => [x * by, y * by]),
    },
    size: garment && isSure ? sizeOf({ mask, inside, graphic }, picture, measured.pose) : null,
  }
}
