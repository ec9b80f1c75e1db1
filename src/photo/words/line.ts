import { type Look, seenTogether } from './looks.ts'
import type { Models } from './models.ts'
import { cutOut, type Picture, type Slab } from './picture.ts'
import { readSteps } from './recognise.ts'
import { blurs, sharpened } from './sharpen.ts'
import { digitsOf, type ReadLine, spelled, type Weigh } from './spell.ts'

/** A line that is less sure is read once more with so much more around it, and once more sharpened. */
const again = { below: 0.6, higher: 1.15 }
/** One that all these leave less sure is read a fourth time, as if it were strongly blurred. */
const strongly = { below: 0.3 }
/** Lines are sharpened at this height, pixels: a blur that a line can be read through is as wide on each. */
const sharpenedAt = 55
/** So many times as much as how likely its words are on a label counts how sure a reading is, as a logarithm. */
const seen = 4

/** A line read once, and what was seen of it. */
export interface Glance extends ReadLine {
  readonly look: Look
}

/** The words in a slab of the picture, from its left, read once. */
export async function glancedAt(
  picture: Picture,
  slab: Slab,
  models: Models,
  weigh: Weigh,
): Promise<Glance> {
  const look = await readSteps(picture, slab, models)
  return { ...spelled(look.steps, weigh), look }
}

/** The words in a slab of the picture, of which `first` was read at a glance. What is hard to read is read thrice or more. */
export async function readLine(
  picture: Picture,
  slab: Slab,
  models: Models,
  weigh: Weigh,
  first: Glance,
): Promise<ReadLine> {
  if (first.sure >= again.below) return first
  const wider = { ...slab, h: slab.h * again.higher }
  const second = await glancedAt(picture, wider, models, weigh)
  const line = cutOut(
    picture,
    wider,
    Math.max(1, Math.round((wider.w / wider.h) * sharpenedAt)),
    sharpenedAt,
  )
  const all = { x: line.width / 2, y: line.height / 2, w: line.width, h: line.height, turn: 0 }
  const sharper = (sigma: number) => glancedAt(sharpened(line, sigma), all, models, weigh)
  const three = [first, second, await sharper(blurs.usual)]
  const best = ofAll(three, weigh)
  if (best.sure >= strongly.below) return best
  return ofAll([...three, await sharper(blurs.strong)], weigh)
}

/** The best of the readings and of what all of them saw together. */
const ofAll = (glances: readonly Glance[], weigh: Weigh): ReadLine =>
  together([...glances, spelled(seenTogether(glances.map(({ look }) => look)), weigh)], weigh)

/**
 * Of several readings of one line the one that is surest and says most of what labels say. Readings that tell
 * other numbers doubt it, those that tell the same ones stand by it: it is as sure as all these together are
 * surer than the others, and never surer than it was by itself.
 */
export function together(readings: readonly ReadLine[], weigh: Weigh): ReadLine {
  const worth = ({ text, sure }: ReadLine): number => weigh(text) + seen * Math.log(sure)
  const best = readings.reduce((a, b) => (worth(b) > worth(a) ? b : a))
  const sign = ({ text }: ReadLine): 1 | -1 => (digitsOf(text) === digitsOf(best.text) ? 1 : -1)
  const ahead = readings.reduce((sum, one) => sum + sign(one) * one.sure, 0)
  const others = readings.filter(({ text }) => text !== best.text)
  return {
    ...best,
    sure: Math.max(0, Math.min(best.sure, ahead)),
    others: [...best.others, ...others.map(({ text, sure }) => ({ text, sure }))].toSorted(
      (x, y) => y.sure - x.sure,
    ),
  }
}
