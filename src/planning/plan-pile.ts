import { checkPlan } from '../quilt/plan/check.ts'
import type { Pile } from '../quilt/plan/instance.ts'
import { naivePlan } from '../quilt/plan/naive.ts'
import { panelsAsked } from '../quilt/plan/panels.ts'
import type { PlanningLane } from './lane.ts'
import type { PilePlan } from './search.ts'

export interface Budget {
  /** The best plan by then is shown while the proof goes on. */
  readonly firstMs?: number
  /** The proof goes on no longer than this. */
  readonly budgetMs?: number
}

/** What a pile is given, unless whoever asks says otherwise. */
export const usualBudget: Required<Budget> = { firstMs: 1000, budgetMs: 5000 }

export interface Planned extends PilePlan {
  /** For the log: the fault that ended the search early, if one did. */
  readonly wrong: string | null
}

/** Everything is bought: what is left to say where even the panels could not be looked at in time. */
function allBought(pile: Pile): PilePlan {
  const hurried = panelsAsked(pile).length
  const uncut = {
    ...pile,
    garments: pile.garments.map((garment) => ({
      ...garment,
      panels: garment.panels.map((panel) => ({ ...panel, patterns: [] })),
    })),
  }
  const plan = naivePlan(uncut)
  const { worth } = checkPlan(uncut, plan)
  const bounds = { lacking: null, V: null, Q: null, P: null, M: null }
  return { pile: uncut, plan, worth, proven: false, bounds, hurried }
}

/**
 * Yields the plan of a pile: once, where it is proven by `firstMs`; else the best one by then, and the best
 * one when it is proven or the time is up. Never hangs and never fails for what the pile is: there is always
 * a plan, and all of them keep every rule. Throws `busy` when too many piles wait.
 */
export async function* planPile(
  pile: Pile,
  lane: PlanningLane,
  { firstMs = usualBudget.firstMs, budgetMs = usualBudget.budgetMs }: Budget = {},
): AsyncGenerator<Planned> {
  let best = null as PilePlan | null
  let done = false
  const work = lane
    .plan({ pile, budgetMs }, (plan) => {
      best = plan
    })
    .finally(() => {
      done = true
    })
  let timer: NodeJS.Timeout | undefined
  const first = new Promise((resolve) => {
    timer = setTimeout(resolve, firstMs)
  })
  try {
    await Promise.race([work, first])
    if (!done && best) yield { ...best, wrong: null }
    const wrong = await work
    yield { ...(best ?? allBought(pile)), wrong }
  } finally {
    clearTimeout(timer)
  }
}

/** The last plan of `planPile`. */
export async function bestPlan(
  pile: Pile,
  lane: PlanningLane,
  budget: Budget = {},
): Promise<Planned> {
  let last: Planned | null = null
  for await (const plan of planPile(pile, lane, budget)) last = plan
  return last!
}
