import type { Look } from '../photo/look/looked.ts'

/** Sizes are told by a photo whose scale is off by no more than this, percent. */
const mostOff = 3

/** Across and along, inches. */
export interface SeenSize {
  readonly across: number
  readonly along: number
  /** Nine in ten are off by less, percent. */
  readonly errorPct: number
}

/** How large the garment lies there, where a sheet beside it tells that surely. */
export function garmentSizeSeen({ scale, size }: Look): SeenSize | null {
  if (!scale || !size || scale.errorPct > mostOff) return null
  return {
    across: size.garmentWidthIn,
    along: size.garmentLengthIn,
    errorPct: scale.errorPct,
  }
}

/** How large its one picture is, told as surely. */
export function pictureSizeSeen({ scale, size }: Look): SeenSize | null {
  if (!scale || !size?.graphicWidthIn || !size.graphicHeightIn || scale.errorPct > mostOff)
    return null
  return { across: size.graphicWidthIn, along: size.graphicHeightIn, errorPct: scale.errorPct }
}
