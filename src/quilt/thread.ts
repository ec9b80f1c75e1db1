import { type Figure, practice } from '../base/figure.ts'
import { metresPerInch } from '../base/units.ts'
import type { Demand } from './design.ts'
import type { Extent, Layout } from './layout.ts'

/**
 * Thread of a lockstitch for each length of its seam, needle and bobbin together; how far apart the lines
 * of quilting run, inches; how often the edge is sewn round for the binding; and what ends and the
 * bobbin's rest take, over the whole.
 */
const usual = { perSeam: 2.5, quiltingApartIn: 2, roundsOfBinding: 2, over: 1.1 }

export const threadFigures: readonly Figure[] = [
  { figure: 'thread/for each length of seam', value: usual.perSeam, source: practice },
  {
    figure: 'thread/lines of quilting apart',
    value: usual.quiltingApartIn,
    unit: 'in',
    source: practice,
  },
  { figure: 'thread/rounds of binding', value: usual.roundsOfBinding, source: practice },
  { figure: 'thread/for ends and bobbins, times', value: usual.over, source: practice },
]

/**
 * Inches of seam in a quilt's top: every side of a piece as cut is half a seam, but for the outer edge.
 * Quartered blocks are sewn a second time, once across and once down.
 */
export function seamsIn({ setting, blockIn, seamIn }: Layout, takes: Demand): number {
  const { finished, pieces, blocks } = takes
  const sides = pieces.reduce((sum, { size, count }) => sum + (size.w + size.h) * count, 0)
  const again = setting === 'quartered' ? blocks * 2 * (blockIn + 2 * seamIn) : 0
  return sides - (finished.w + finished.h) + again
}

/** Metres of thread, and of the seams they are for. */
export interface Thread {
  readonly piecingM: number
  readonly quiltingM: number
  readonly bindingM: number
  readonly threadM: number
}

/** Thread for a quilt of that finished size whose top has so many inches of seam. */
export function thread({ w, h }: Extent, seams: number): Thread {
  const metres = (inches: number): number => inches * metresPerInch
  const piecingM = metres(seams)
  const quiltingM = metres((w * h) / usual.quiltingApartIn)
  const bindingM = metres(2 * (w + h) * usual.roundsOfBinding)
  const threadM = (piecingM + quiltingM + bindingM) * usual.perSeam * usual.over
  return { piecingM, quiltingM, bindingM, threadM }
}
