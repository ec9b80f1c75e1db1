import type { Pair, Told } from './pairing.ts'
import { type Cut, cutInto, otherThanNames, type Repeat, same, wholesIn } from './repeats.ts'

/** The make-up that a part's repetitions tell, in however many languages. */
export interface Agreed {
  readonly group: readonly Pair[]
  /** How often it is told whole. */
  readonly copies: number
  /** All else that is told is the same make-up, or another part's, with one share misread. */
  readonly explained: boolean
  readonly repeats: readonly Repeat[]
}

/** What one stretch of the label tells, between two names of parts. */
export type Stretch = readonly Told[]

/**
 * The one make-up that is told whole, or more often than any other; null where there is none, or where
 * two stand against each other. `foreign` are make-ups of other parts, whose names may have been lost.
 */
export function agreedOn(
  stretches: readonly Stretch[],
  foreign: readonly (readonly Pair[])[],
): Agreed | null {
  const read = stretches
    .flatMap(wholesIn)
    .filter((whole) => !foreign.some((other) => alike(other, whole)))
    .map((whole) => readAs(stretches, whole, foreign))
  const [first, ...others] = read
  if (!first) return null
  const best = others.reduce((a, b) => (isBetter(b, a) ? b : a), first)
  const against = contradictions(best, stretches)
  if (against.some((other) => other.copies >= Math.min(2, best.copies))) return null
  const rest = best.cuts.flatMap((cut) => cut.rest)
  const flawed = best.repeats.filter(({ flaws }) => flaws > 0)
  return {
    group: clearest(best),
    copies: best.copies,
    explained:
      against.length === 0 &&
      flawed.every((repeat) => isBorneOut(repeat, best.copies)) &&
      rest.every((told) => isIdle(told, best.whole)),
    repeats: best.repeats,
  }
}

/** The repetitions, where all is told of other parts again, whose names were lost here; else null. */
export function othersTold(
  stretches: readonly Stretch[],
  others: readonly (readonly Pair[])[],
): readonly Repeat[] | null {
  const cuts = stretches.map((told) => cutInto(told, null, others))
  const repeats = cuts.flatMap((cut) => cut.repeats)
  const explained = repeats.every(isOneSlip) && cuts.every(({ rest }) => rest.length === 0)
  return repeats.length > 0 && explained ? repeats : null
}

interface ReadAs {
  readonly whole: readonly Pair[]
  readonly cuts: readonly Cut[]
  readonly repeats: readonly Repeat[]
  readonly copies: number
  readonly cost: number
}

function readAs(
  stretches: readonly Stretch[],
  whole: readonly Pair[],
  foreign: readonly (readonly Pair[])[],
): ReadAs {
  const cuts = stretches.map((told) => cutInto(told, whole, foreign))
  const repeats = cuts.flatMap((cut) => cut.repeats)
  return {
    whole,
    cuts,
    repeats,
    copies: repeats.filter(({ of, flaws }) => of === whole && flaws === 0).length,
    cost: cuts.reduce((sum, { cost }) => sum + cost, 0),
  }
}

const isBetter = (a: ReadAs, b: ReadAs): boolean =>
  a.copies > b.copies || (a.copies === b.copies && a.cost < b.cost)

/** Other make-ups that sum to 100 among what this one leaves over. */
const contradictions = (best: ReadAs, stretches: readonly Stretch[]): ReadAs[] =>
  best.cuts
    .flatMap(({ repeats, rest }) => [
      ...wholesIn(rest),
      ...repeats.filter((one) => !isOneSlip(one)).flatMap(({ told }) => wholesIn(told)),
    ])
    .filter((whole) => !alike(whole, best.whole))
    .map((whole) => readAs(stretches, whole, []))

/** One share misread; in a language that is not known no name is read at all. */
const isOneSlip = (repeat: Repeat): boolean => repeat.flaws <= 1 || otherThanNames(repeat) <= 1

/** Whole make-ups with which a repetition may have two slips, and still one share as it is. */
const manyCopies = 3

const isBorneOut = (repeat: Repeat, copies: number): boolean => {
  if (copies === 1) return isHalfRead(repeat)
  return isOneSlip(repeat) || (copies >= manyCopies && otherThanNames(repeat) <= 2)
}

/** As much as was read of it is the same. */
const isHalfRead = (repeat: Repeat): boolean =>
  isOneSlip(repeat) && repeat.missing === 0 && repeat.others === 0

/** A name beside its own share, or a guess that came to nothing. */
const isIdle = (told: Told, whole: readonly Pair[]): boolean =>
  'kind' in told &&
  (told.doubt === 'spelling' ||
    told.code === true ||
    whole.some(({ fibre }) => fibre.fibre === told.fibre))

const alike = (a: readonly Pair[], b: readonly Pair[]): boolean =>
  a.length === b.length && a.every((pair) => b.some((other) => same(pair, other)))

/** Each share as it is told first, or where it is told without a doubt. */
const clearest = ({ whole, repeats }: ReadAs): Pair[] =>
  whole.map((pair, at) => {
    const told = repeats.flatMap(({ of, exact }) => (of === whole ? (exact[at] ?? []) : []))
    return told.find(({ fibre }) => fibre.doubt === null) ?? told[0] ?? pair
  })
