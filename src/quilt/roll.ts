import { type Figure, practice } from '../base/figure.ts'
import type { Extent } from './layout.ts'

/** Pieces of one size, inches: across the roll, and along it. */
export interface RollPieces {
  readonly size: Extent
  readonly count: number
}

/** A piece is cut so much larger each way before it is backed, and trimmed to size afterwards, inches. */
export const roughCutIn = 1

export const rollFigures: readonly Figure[] = [
  { figure: 'interfacing/rough-cut over size', value: roughCutIn, unit: 'in', source: practice },
]

/** A piece with its allowance, as it is cut before it is backed. */
export const roughCut = ({ w, h }: Extent): Extent => ({ w: w + roughCutIn, h: h + roughCutIn })

/** A piece wider than the roll is backed in equal parts, side by side. */
function inParts({ size: { w, h }, count }: RollPieces, widthIn: number): RollPieces {
  const parts = Math.ceil(w / widthIn)
  return { size: { w: w / parts, h }, count: count * parts }
}

/**
 * Length of roll, inches, that pieces take in rows right across it: the longest first, and shorter ones
 * in what is left beside them. None is turned, since its low-stretch direction runs one way.
 */
export function rollLength(pieces: readonly RollPieces[], widthIn: number): number {
  const sorted = pieces
    .map((one) => inParts(one, widthIn))
    .toSorted((a, b) => b.size.h - a.size.h || b.size.w - a.size.w)
  const left: number[] = []
  let length = 0
  for (const { size, count } of sorted) {
    let rest = count
    for (const [row, free] of left.entries()) {
      const here = Math.min(rest, Math.floor(free / size.w))
      left[row] = free - here * size.w
      rest -= here
    }
    const across = Math.max(1, Math.floor(widthIn / size.w))
    for (; rest > 0; rest -= across) {
      left.push(widthIn - Math.min(rest, across) * size.w)
      length += size.h
    }
  }
  return length
}
