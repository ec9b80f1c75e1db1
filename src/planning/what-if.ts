import { hasRule, type Rule, rules, withOneMore, withoutRule } from '../quilt/plan/changes.ts'
import type { Pile } from '../quilt/plan/instance.ts'
import type { PlanningLane } from './lane.ts'
import { type Budget, bestPlan, type Planned } from './plan-pile.ts'

/** What a change of the pile saves: above zero where less is bought. */
export interface Saving {
  readonly steps: number
  readonly pieces: number
  /** Must-use garments that are used with the change and were not before. */
  readonly garments: number
  /** Both plans are proven: no saving is larger or smaller. */
  readonly proven: boolean
}

async function saved(
  before: Planned,
  pile: Pile,
  lane: PlanningLane,
  budget: Budget,
): Promise<Saving> {
  const after = await bestPlan(pile, lane, budget)
  return {
    steps: before.worth.Q - after.worth.Q,
    pieces: before.worth.P - after.worth.P,
    garments: before.worth.V - after.worth.V,
    proven: before.proven && after.proven,
  }
}

/** What each rule of the pile costs: what would be saved without it. */
export async function ruleCosts(
  planned: Planned,
  lane: PlanningLane,
  budget: Budget = {},
): Promise<readonly { readonly rule: Rule; readonly saves: Saving }[]> {
  const costs = []
  for (const rule of rules.filter((one) => hasRule(planned.pile, one))) {
    const saves = await saved(planned, withoutRule(planned.pile, rule), lane, budget)
    costs.push({ rule, saves })
  }
  return costs
}

/** What one more ordinary garment saves, for each role that lacks pieces; the largest saving first. */
export async function oneMoreGarment(
  planned: Planned,
  lane: PlanningLane,
  budget: Budget = {},
): Promise<readonly { readonly role: string; readonly saves: Saving }[]> {
  const { pile, plan } = planned
  const found = []
  for (const role of new Set(plan.buy.map((one) => one.role))) {
    const more = withOneMore(pile, role)
    if (!more) continue
    found.push({ role: pile.roles[role]!.name, saves: await saved(planned, more, lane, budget) })
  }
  return found.sort((a, b) => b.saves.steps - a.saves.steps || b.saves.pieces - a.saves.pieces)
}
