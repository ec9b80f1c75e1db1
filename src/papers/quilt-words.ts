import { labOf } from '../base/colour.ts'
import { type ColourWord, colourWord } from '../base/colour-words.ts'
import type { QuiltSize } from '../quilt/layout.ts'
import type { Say } from '../words/words.ts'
import type { QuiltToDraw } from './quilt-picture.ts'

/** A second colour is told where it covers at least this share of the quilt. */
const secondShare = 0.15

type Seen = Pick<QuiltToDraw, 'cloths' | 'pieces'>

/** The colours that cover most, the first most of all; two at most. What nobody told is none. */
export function mainColours({ cloths, pieces }: Seen): ColourWord[] {
  const words = cloths.map(({ colour }) => colour && colourWord(labOf(colour)))
  const areas = new Map<ColourWord, number>()
  let whole = 0
  for (const { parts, cloth } of pieces) {
    const area = parts.reduce((sum, { w, h }) => sum + w * h, 0)
    const word = words[cloth]
    if (word) areas.set(word, (areas.get(word) ?? 0) + area)
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
  readonly quilt: Seen
}

/** What the picture shows, for who cannot see it. */
export function quiltTitle({ size, columns, rows, quilt }: QuiltTold, say: Say): string {
  const [first, second] = mainColours(quilt).map((word) => say(`colours.${word}`))
  const garments = garmentsIn(quilt).size
  const gaps = { size, columns, rows, garments, first: first ?? '', second: second ?? '' }
  return say(`quilt_picture.${second ? 'two' : first ? 'one' : 'none'}`, gaps)
}

/** How many pieces each garment has in the quilt, by its number. */
export function garmentsIn({ cloths, pieces }: Seen): ReadonlyMap<number, number> {
  const counts = new Map<number, number>()
  for (const { cloth } of pieces) {
    const { garment } = cloths[cloth]!
    if (garment !== null) counts.set(garment, (counts.get(garment) ?? 0) + 1)
  }
  return counts
}
