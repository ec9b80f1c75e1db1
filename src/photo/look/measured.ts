import type { Pixels } from '../cloth.ts'
import { graphicRim } from './graphic-rim.ts'
import type { Seen } from './look.ts'
import type { Look, SheetKind } from './looked.ts'
import { scaleIn } from './scale.ts'
import type { Camera } from './sheet-pose.ts'
import { sizeOf } from './size.ts'

/** Sizes are told by a scale that is no further off than this, percent. */
const mostOff: Readonly<Record<SheetKind, number>> = { letter: 3, a4: 3, id1: 5 }

const nothing: Pick<Look, 'scale' | 'size'> = { scale: null, size: null }

/**
 * What a sheet beside the garment tells of its size; nothing where none lies there for sure. `picture`: the photo
 * large enough to feel for a sheet's sides, as seen by that camera. Pure.
 */
export function measuredIn(
  picture: Pixels,
  { look, mask, inside, garment }: Seen,
  camera: Camera,
): Pick<Look, 'scale' | 'size'> {
  const measured = garment && scaleIn(picture, mask, camera)
  if (!measured) return nothing
  const by = look.width / picture.width
  const graphic = look.graphic ? graphicRim(garment) : []
  return {
    scale: {
      by: measured.by,
      mmPerPx: measured.mmPerPx / by,
      errorPct: measured.errorPct,
      corners: measured.corners.map(([x, y]) => [x * by, y * by]),
    },
    size:
      measured.errorPct <= mostOff[measured.by]
        ? sizeOf({ mask, inside, graphic }, picture, measured.pose)
        : null,
  }
}
