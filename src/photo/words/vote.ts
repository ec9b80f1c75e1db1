import type { Slab } from './picture.ts'
import type { ReadLine, Weigh } from './spell.ts'
import { fromBehind } from './upright.ts'

/** By so many sure letters a vote is won before all lines have been asked. */
const clearVote = 10
/** Likelihood of a letter, squared, from which on it counts. */
const leastVote = 0.1
/** Known words of so many letters tell which end is up. */
const tellingFrom = 5

interface Vote<Glance> {
  readonly isUpright: boolean
  /** What the lines that voted say at a glance, read the way that won. */
  readonly known: ReadonlyMap<Slab, Glance>
}

/** Lines are read both ways, long ones first, until one way has many more likely letters and known words. */
export async function voted<Glance extends ReadLine>(
  slabs: readonly Slab[],
  glance: (slab: Slab) => Promise<Glance>,
  weigh: Weigh,
): Promise<Vote<Glance>> {
  const ahead = new Map<Slab, Glance>()
  const behind = new Map<Slab, Glance>()
  // Letters count the more the likelier they are: what is read upside down is likely nowhere. Those of a blurred
  // line are not likely either, and yet tell more than its other end, which often shows none at all.
  const worthOf = ({ text, letters }: ReadLine): number =>
    letters.reduce((sum, p) => sum + Math.max(0, p ** 2 - leastVote), 0) +
    Math.max(0, weigh(tellingWords(text)))
  let votes = 0
  for (const slab of slabs.toSorted((a, b) => b.w / b.h - a.w / a.h)) {
    const [one, other] = [await glance(slab), await glance(fromBehind(slab))]
    ahead.set(slab, one)
    behind.set(slab, other)
    votes += worthOf(one) - worthOf(other)
    if (Math.abs(votes) > clearVote) break
  }
  const isUpright = votes >= 0
  return { isUpright, known: isUpright ? ahead : behind }
}

/** Short words are found in anything. */
const tellingWords = (text: string): string =>
  text
    .split(' ')
    .filter((word) => word.length >= tellingFrom || word.includes('%'))
    .join(' ')
