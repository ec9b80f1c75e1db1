import type { PicturedLine } from '../../textile/label-lines.ts'
import type { Models } from './models.ts'
import type { Picture, Slab } from './picture.ts'
import { readSteps } from './recognise.ts'
import { digitsOf, type ReadLine, spelled, type Weigh } from './spell.ts'

/** A line that is less sure is read once more, with so much more around it. */
const again = { below: 0.6, higher: 1.15 }
/** So many times as much as how likely its words are on a label counts how sure a reading is, as a logarithm. */
const seen = 4

/** The words in a slab of the picture, from its left. What is hard to read is read twice. */
export async function readLine(
  picture: Picture,
  slab: Slab,
  models: Models,
  weigh: Weigh,
): Promise<ReadLine> {
  const first = spelled(await readSteps(picture, slab, models), weigh)
  if (first.sure >= again.below) return first
  const wider = { ...slab, h: slab.h * again.higher }
  const second = spelled(await readSteps(picture, wider, models), weigh)
  return better(first, second, weigh)
}

/**
 * Of two readings the one that is surer and says more of what labels say. Where the two tell different numbers,
 * each is only as sure as the other is not.
 */
export function better(a: ReadLine, b: ReadLine, weigh: Weigh): ReadLine {
  const worth = ({ text, sure }: ReadLine): number => weigh(text) + seen * Math.log(sure)
  const [best, rest] = worth(b) > worth(a) ? [b, a] : [a, b]
  if (digitsOf(best.text) === digitsOf(rest.text)) return best
  const other: PicturedLine = { text: rest.text, sure: rest.sure }
  return {
    ...best,
    sure: Math.max(0, best.sure - rest.sure),
    others: [...best.others, other].toSorted((x, y) => y.sure - x.sure),
  }
}
