import type { Act } from './better-acts.ts'
import { compare, gainsOf, type Outcome, ranks } from './better-outcome.ts'
import {
  byOutcome,
  type Possible,
  possible,
  type Standing,
  type Trial,
  trial,
} from './better-trials.ts'
import type { Facts } from './facts.ts'

/** The combination that leaves the fewest reasons, the gravest counted first. */
const clearest = (trials: readonly Trial[]): Trial | undefined =>
  trials.toSorted((a, b) => compare(a.reasons, b.reasons) || byOutcome(a, b))[0]

interface Part {
  readonly act: Act
  readonly brings: Trial
}

/** The best layout where one of them is another layout: alone it may do nothing, and with the rest much. */
function joined(standing: Standing, parts: readonly Part[]): Trial {
  const { knowledge, pile } = standing
  const facts = Object.assign({}, ...parts.map(({ brings }) => brings.facts)) as Partial<Facts>
  if (!parts.some(({ act }) => act.layout)) return trial(standing, facts)
  const others = knowledge.layouts.filter(({ id }) => id !== pile.layout)
  return others.map(({ id }) => trial(standing, facts, id)).toSorted(byOutcome)[0]!
}

/** The grade and whether the wished layout suits, higher is better. */
const rankOf = (outcome: Outcome): readonly number[] => ranks(outcome).slice(0, 2)

/** Those that speak of other facts than the ones before them. */
function apart(parts: readonly Part[]): Part[] {
  const told = new Set<string>()
  return parts.filter(({ brings }) => {
    const facts = Object.keys(brings.facts)
    const clashes = facts.some((fact) => told.has(fact))
    if (!clashes) for (const fact of facts) told.add(fact)
    return !clashes
  })
}

/** Acts that only together give a better grade or layout than each alone, and the best they could bring. */
export interface Together {
  /** The lightest first. */
  readonly acts: readonly Act[]
  readonly best: Possible
}

/**
 * Joins the clearest outcome of every act, then leaves out those that are not needed. `alone` are the
 * outcomes of no act and of each single one. Where it finds acts, the tables give what it says; it
 * looks at one combination for each act, so it may miss some.
 */
export function togetherOf(
  standing: Standing,
  tried: readonly (readonly [Act, readonly Trial[]])[],
  alone: readonly [now: Outcome, ...single: Outcome[]],
): Together | null {
  const rankFor = (parts: readonly Part[]) => rankOf(joined(standing, parts).outcome)
  const all = apart(
    tried.flatMap(([act, trials]) => {
      const brings = clearest(trials)
      return brings ? [{ act, brings }] : []
    }),
  )
  const reached = rankFor(all)
  if (alone.some((outcome) => compare(reached, rankOf(outcome)) <= 0)) return null
  // The heaviest is left out first, as long as the rest does as well.
  const needed = all
    .toSorted((a, b) => b.act.effort - a.act.effort)
    .reduce<readonly Part[]>((kept, part) => {
      const rest = kept.filter((one) => one !== part)
      return compare(rankFor(rest), reached) === 0 ? rest : kept
    }, all)
  const best = joined(standing, needed)
  if (gainsOf(alone[0], best.outcome).length === 0) return null
  const acts = needed.map(({ act }) => act).toSorted((a, b) => a.effort - b.effort)
  return { acts, best: possible(best) }
}
