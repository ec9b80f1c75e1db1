import type { Extent } from '../quilt/layout.ts'
import { two } from './cloth-marks.ts'
import type { Drawing, Mark } from './drawing.ts'
import type { PlacedPiece } from './piece-places.ts'

/** As large as leaves room for words beside it on one page, mm. */
const most = { w: 110, h: 95 }

/** A quilt's pieces in outline; those of one garment grey, so that it is seen where they go. */
export function quiltOutline(
  finished: Extent,
  pieces: readonly PlacedPiece[],
  garment: number,
): Drawing {
  const scale = Math.min(most.w / finished.w, most.h / finished.h)
  const marks = pieces.flatMap(({ parts, garment: of }) =>
    parts.map(
      ({ x, y, w, h }): Mark => ({
        mark: 'rect',
        at: [two(x * scale + 0.5), two(y * scale + 0.5)],
        w: two(w * scale),
        h: two(h * scale),
        stroke: 'ink',
        width: of === garment ? 0.5 : 0.15,
        fill: of === garment ? 'seam' : 'paper',
      }),
    ),
  )
  // Lines of its own pieces are not covered by those beside them.
  const own = (mark: Mark): number => ('fill' in mark && mark.fill === 'seam' ? 1 : 0)
  return {
    width: two(finished.w * scale + 1),
    height: two(finished.h * scale + 1),
    unit: 'mm',
    marks: marks.toSorted((a, b) => own(a) - own(b)),
  }
}
