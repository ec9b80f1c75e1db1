import type { SeenPhoto } from './garment-look.ts'

/**
 * Sizes are told by a sheet whose scale is off by no more than this, percent. Who marked its corners compares the
 * outline with it, and is told how far off the size may be.
 */
const mostOff = { found: 3, marked: 6 } as const

/** Across and along, inches. */
export interface SeenSize {
  readonly across: number
  readonly along: number
  /** Nine in ten are off by less, percent. */
  readonly errorPct: number
}

type Measured = Pick<SeenPhoto, 'look' | 'sheet'>

const isSure = ({ look: { scale }, sheet }: Measured): boolean =>
  scale !== null && scale.errorPct <= mostOff[sheet ? 'marked' : 'found']

/** How large the garment lies there, where a sheet beside it tells that surely. */
export function garmentSizeSeen(seen: Measured): SeenSize | null {
  const { scale, size } = seen.look
  if (!scale || !size || !isSure(seen)) return null
  return {
    across: size.garmentWidthIn,
    along: size.garmentLengthIn,
    errorPct: scale.errorPct,
  }
}

/** How large its one picture is, told as surely. */
export function pictureSizeSeen(seen: Measured): SeenSize | null {
  const { scale, size } = seen.look
  if (!scale || !size?.graphicWidthIn || !size.graphicHeightIn || !isSure(seen)) return null
  return { across: size.graphicWidthIn, along: size.graphicHeightIn, errorPct: scale.errorPct }
}
