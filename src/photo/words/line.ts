import type { Models } from './models.ts'
import type { Picture, Slab } from './picture.ts'
import { readSteps } from './recognise.ts'
import { digitsOf, type OtherLine, type ReadLine, spelled, type Weigh } from './spell.ts'

/** A line that is less sure is read once more, with so much more around it. */
const again = { below: 0.6, higher: 1.15 }

/** The words in a slab of the picture, from its left. What is hard to read is read twice, and the surer reading taken. */
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
  return surer(first, second)
}

/** Where the two tell different numbers, each is only as sure as the other is not. */
export function surer(a: ReadLine, b: ReadLine): ReadLine {
  const [best, rest] = b.sure > a.sure ? [b, a] : [a, b]
  if (digitsOf(best.text) === digitsOf(rest.text)) return best
  const other: OtherLine = { text: rest.text, sure: rest.sure }
  return {
    ...best,
    sure: Math.max(0, best.sure - rest.sure),
    others: [...best.others, other].toSorted((x, y) => y.sure - x.sure),
  }
}
