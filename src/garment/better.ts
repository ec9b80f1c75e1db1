import type { Act } from './better-acts.ts'
import { type Gain, gains, gainsOf, type Outcome } from './better-outcome.ts'
import { type Together, togetherOf } from './better-together.ts'
import {
  byOutcome,
  isOpen,
  openFacts,
  type Possible,
  possible,
  type Trial,
  trial,
  trialsOf,
} from './better-trials.ts'
import type { FactName, Facts } from './facts.ts'
import { grades, type PileFacts } from './grade.ts'
import type { Knowledge } from './knowledge.ts'

/** A value that a fact may turn out to have, with the best that could come of it. */
export interface Chance {
  readonly fact: FactName
  readonly value: string
  readonly outcome: Outcome
}

/** An act that may help. */
export interface Step {
  readonly act: Act
  /** The facts that it may change, as they stand. */
  readonly now: Partial<Facts>
  /** The best that it could bring, which is nowhere worse than now. */
  readonly best: Possible
  readonly worst: Possible
  /** Where these are so, each of the gains follows, whatever else the act brings. */
  readonly hangsOn: Partial<Facts>
  /** What the best betters, the weightiest first. Never empty. */
  readonly gains: readonly Gain[]
  readonly chances: readonly Chance[]
}

export interface Better {
  readonly now: Outcome
  /** The most helpful first. */
  readonly steps: readonly Step[]
  /** Null: no acts do more for grade or layout together than one of them alone. */
  readonly together: Together | null
}

function chancesOf(facts: Facts, act: Act, trials: readonly Trial[]): Chance[] {
  return openFacts(facts, act).flatMap((fact) => {
    const valueIn = (one: Trial): string => one.facts[fact] ?? facts[fact]
    return [...new Set(trials.map(valueIn))].map((value) => ({
      fact,
      value,
      outcome: trials.filter((one) => valueIn(one) === value).toSorted(byOutcome)[0]!.outcome,
    }))
  })
}

/** The open facts that the best rests on: left out, one after the other, where the rest is enough. */
function hangsOn(facts: Facts, now: Outcome, act: Act, trials: readonly Trial[], best: Trial) {
  const valueIn = (one: Trial, fact: FactName): string => one.facts[fact] ?? facts[fact]
  const won = gainsOf(now, best.outcome)
  const asGood = ({ outcome }: Trial): boolean => {
    const all = gainsOf(now, outcome)
    return outcome.grade === best.outcome.grade && won.every((gain) => all.includes(gain))
  }
  const isEnough = (told: readonly FactName[]): boolean =>
    trials.every(
      (one) => asGood(one) || told.some((fact) => valueIn(one, fact) !== valueIn(best, fact)),
    )
  const needed = openFacts(facts, act).reduceRight<readonly FactName[]>(
    (told, fact) => {
      const rest = told.filter((one) => one !== fact)
      return isEnough(rest) ? rest : told
    },
    openFacts(facts, act),
  )
  return Object.fromEntries(needed.map((fact) => [fact, valueIn(best, fact)])) as Partial<Facts>
}

function stepOf(facts: Facts, now: Outcome, act: Act, trials: readonly Trial[]): Step | null {
  const sorted = trials.toSorted(byOutcome)
  const best = sorted.find(({ outcome }) => gainsOf(now, outcome).length > 0)
  if (!best) return null
  return {
    act,
    now: Object.fromEntries(openFacts(facts, act).map((fact) => [fact, facts[fact]])),
    best: possible(best),
    worst: possible(sorted.at(-1)!),
    hangsOn: hangsOn(facts, now, act, trials, best),
    gains: gainsOf(now, best.outcome),
    chances: chancesOf(facts, act, trials),
  }
}

/** The place of the weightiest gain; 0 is the grade. */
const leading = (step: Step): number => gains.indexOf(step.gains[0]!)

const byHelp = (a: Step, b: Step): number =>
  leading(a) - leading(b) ||
  (leading(a) === 0
    ? grades.indexOf(a.best.outcome.grade) - grades.indexOf(b.best.outcome.grade)
    : 0) ||
  a.act.effort - b.act.effort

/**
 * Which of these acts could better what becomes of the garment, the most helpful first. An act is
 * among the steps exactly where some combination of what it may bring betters something and worsens
 * nothing, everything else being as it is. Nothing here is a promise: the facts may turn out otherwise.
 */
export function better(
  facts: Facts,
  pile: PileFacts,
  knowledge: Knowledge,
  acts: readonly Act[],
): Better {
  const standing = { facts, pile, knowledge }
  const now = trial(standing, {}).outcome
  const tried = acts
    .filter((act) => isOpen(facts, act) && (!act.layout || now.wish === 'misfit'))
    .map((act) => [act, trialsOf(standing, act)] as const)
  const steps = tried
    .flatMap(([act, trials]) => stepOf(facts, now, act, trials) ?? [])
    .toSorted(byHelp)
  const alone = steps.map(({ best }) => best.outcome)
  return { now, steps, together: togetherOf(standing, tried, [now, ...alone]) }
}
