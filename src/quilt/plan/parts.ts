import { capacityOf } from './capacity.ts'
import type { Pile } from './instance.ts'
import type { Plan, Worth } from './plan.ts'

const onlyRoles = (pile: Pile, roles: ReadonlySet<number>): Pile['demand'] =>
  pile.demand.map((row) => row.map((count, role) => (roles.has(role) ? count : 0)))

/**
 * Piles that can be planned one by one: a role that no garment can give to is bought whole, and what is
 * bought for it hangs on nothing else. The pile with the garments comes last.
 */
export function partsOf(pile: Pile): Pile[] {
  const capacities = pile.garments.map((garment) => capacityOf(pile, garment))
  const given = new Set(capacities.flatMap(({ roles }) => roles))
  const bought = pile.roles.flatMap((_, role) =>
    !given.has(role) && pile.demand.some((row) => row[role]! > 0) ? [role] : [],
  )
  if (bought.length === 0) return [pile]
  return [
    ...bought.map((role) => ({ ...pile, garments: [], demand: onlyRoles(pile, new Set([role])) })),
    { ...pile, demand: onlyRoles(pile, given) },
  ]
}

export const joinedPlan = (plans: readonly Plan[]): Plan => ({
  supply: plans.flatMap(({ supply }) => supply),
  cuts: plans.flatMap(({ cuts }) => cuts),
  buy: plans.flatMap(({ buy }) => buy),
  cloth: plans.flatMap(({ cloth }) => cloth),
})

/** What parts are worth together; all but M add up. */
export function joinedWorth(worths: readonly Worth[]): Worth {
  const sum = (aim: keyof Worth) => worths.reduce((all, worth) => all + worth[aim], 0)
  return {
    lacking: sum('lacking'),
    V: sum('V'),
    Q: sum('Q'),
    P: sum('P'),
    M: Math.max(...worths.map(({ M }) => M)),
  }
}
