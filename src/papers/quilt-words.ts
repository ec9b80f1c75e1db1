import { labOf } from '../base/colour.ts'
import { type ColourWord, colourWord } from '../base/colour-words.ts'
import type { QuiltSize } from '../quilt/layout.ts'
import type { Say } from '../words/words.ts'
import type { DrawnPiece } from './quilt-picture.ts'

/** A second colour is told where it covers at least this share of the quilt. */
const secondShare = 0.15

/** The colours that cover most, the first most of all; two at most. */
export function mainColours(pieces: readonly DrawnPiece[]): ColourWord[] {
  const areas = new Map<ColourWord, number>()
  let whole = 0
  for (const { parts, colour } of pieces) {
    const word = colourWord(labOf(colour))
    const area = parts.reduce((sum, { w, h }) => sum + w * h, 0)
    areas.set(word, (areas.get(word) ?? 0) + area)
    whole += area
  }
  const [first, second] = [...areas].sort(([, a], [, b]) => b - a)
  if (!first) return []
  return second && second[1] >= secondShare * whole ? [first[0], second[0]] : [first[0]]
}

export interface QuiltTold {
  readonly size: QuiltSize
  readonly columns: number
  readonly rows: number
  readonly garments: number
  readonly pieces: readonly DrawnPiece[]
}

/** What the picture shows, for who cannot see it. */
export function quiltTitle({ size, columns, rows, garments, pieces }: QuiltTold, say: Say): string {
  const [first, second] = mainColours(pieces).map((word) => say(`colours.${word}`))
  const gaps = { size, columns, rows, garments, first: first ?? '', second: second ?? '' }
  return say(`quilt_picture.${second ? 'two' : 'one'}`, gaps)
}
