import type { Act } from './better-acts.ts'
import { compare, gainsOf, type Outcome } from './better-outcome.ts'
import {
  byOutcome,
  type Possible,
  possible,
  type Standing,
  type Trial,
  trial,
} from './better-trials.ts'
import type { Facts } from './facts.ts'
import { type Grade, grades } from './grade.ts'

/** The combination that leaves the fewest reasons, the gravest counted first. */
const clearest = (trials: readonly Trial[]): Trial | undefined =>
  trials.toSorted((a, b) => compare(a.reasons, b.reasons) || byOutcome(a, b))[0]

interface Part {
  readonly act: Act
  readonly brings: Trial
}

function joined(standing: Standing, parts: readonly Part[]): Trial {
  const layout = parts.find(({ brings }) => brings.layout)?.brings.layout
  const facts = Object.assign({}, ...parts.map(({ brings }) => brings.facts)) as Partial<Facts>
  return trial(standing, facts, layout ?? undefined)
}

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

/** Acts that only together give a better grade than each alone, and the best they could bring. */
export interface Together {
  readonly acts: readonly Act[]
  readonly best: Possible
}

/**
 * Joins the clearest outcome of every act, then leaves out those that are not needed. `alone` is the
 * best grade that one act gives. Where it finds acts, their facts give that grade; it may miss some.
 */
export function togetherOf(
  standing: Standing,
  now: Outcome,
  tried: readonly (readonly [Act, readonly Trial[]])[],
  alone: Grade,
): Together | null {
  const reach = (parts: readonly Part[]) => joined(standing, parts).outcome
  const all = apart(
    tried.flatMap(([act, trials]) => {
      const brings = clearest(trials)
      return brings ? [{ act, brings }] : []
    }),
  )
  const { grade: reached } = reach(all)
  if (grades.indexOf(reached) >= grades.indexOf(alone)) return null
  // The heaviest is left out first, as long as the rest does as well.
  const needed = all
    .toSorted((a, b) => b.act.effort - a.act.effort)
    .reduce<readonly Part[]>((kept, part) => {
      const rest = kept.filter((one) => one !== part)
      return reach(rest).grade === reached ? rest : kept
    }, all)
  const best = joined(standing, needed)
  if (gainsOf(now, best.outcome).length === 0) return null
  return { acts: needed.map(({ act }) => act), best: possible(best) }
}
