import { type Capacity, capacityOf } from './capacity.ts'
import { checkPlan } from './check.ts'
import type { Pile } from './instance.ts'
import { type Manner, mustFirst, naivePlan, planInManner } from './naive.ts'
import { compareWorth, type Plan } from './plan.ts'

/** So many places between dark and light are tried. */
const mostThresholds = 8

/** Lightnesses between which dark and light garments may be told apart, spread over the pile. */
function thresholds({ garments, contrast }: Pile): (number | null)[] {
  if (contrast.length === 0) return [null]
  const all = [...new Set(garments.map(({ L }) => L))].sort((a, b) => a - b)
  const step = Math.max(1, all.length / mostThresholds)
  const some = Array.from(
    { length: Math.min(all.length, mostThresholds) },
    (_, n) => all[Math.floor(n * step)]!,
  )
  return [null, ...some]
}

function castsAt(pile: Pile, threshold: number | null): Manner['casts'] {
  if (threshold === null) return () => true
  return (garment, role) => {
    const { L } = pile.garments[garment]!
    return pile.contrast.every(
      ({ light, dark, delta }) =>
        (role !== dark || L <= threshold) && (role !== light || L >= threshold + delta),
    )
  }
}

/** What the garments behind a place may give to a role, at most; one piece more, so that it is never none. */
function supplyBehind(
  order: readonly number[],
  capacities: readonly Capacity[],
  casts: Manner['casts'],
): Manner['supply'] {
  const roles = capacities[0]?.forRole.length ?? 0
  const behind: number[][] = [new Array(roles).fill(1)]
  for (const g of order.toReversed()) {
    const last = behind.at(-1)!
    behind.push(last.map((sum, role) => sum + (casts(g, role) ? capacities[g]!.forRole[role]! : 0)))
  }
  return (role, after) => behind[order.length - 1 - after]![role]!
}

/** Must-use garments first; of these, and of the others, those that can do least else. */
function orders(pile: Pile, capacities: readonly Capacity[]): number[][] {
  const by = (rank: (g: number) => number) =>
    mustFirst(pile).sort(
      (a, b) =>
        Number(pile.garments[b]!.must) - Number(pile.garments[a]!.must) || rank(a) - rank(b),
    )
  return [
    by((g) => capacities[g]!.roles.length * 1e6 - capacities[g]!.total),
    by((g) => -capacities[g]!.total),
  ]
}

/** So many patterns are looked at for all hurried plans together. */
const mostLooks = 100_000

/** Patterns that one hurried plan looks at. */
const looksOf = (capacities: readonly Capacity[]): number =>
  capacities
    .flatMap(({ classes }) => classes)
    .reduce((sum, { mult, patterns }) => sum + mult * patterns.length, 1)

/** The best of some hurried plans: there at once, and where the proof sets out from. */
export function firstPlan(pile: Pile): Plan {
  const capacities = pile.garments.map((garment) => capacityOf(pile, garment))
  let plan = naivePlan(pile)
  let worth = checkPlan(pile, plan).worth
  let looks = mostLooks / looksOf(capacities)
  for (const threshold of thresholds(pile)) {
    const casts = castsAt(pile, threshold)
    for (const order of orders(pile, capacities)) {
      looks -= 1
      if (looks < 1) return plan
      const supply = supplyBehind(order, capacities, casts)
      const other = planInManner(pile, capacities, { order, casts, supply })
      const worthOther = checkPlan(pile, other).worth
      if (compareWorth(worthOther, worth) >= 0) continue
      plan = other
      worth = worthOther
    }
  }
  return plan
}
