import { Failure } from '../base/failures.ts'
import type { Planned } from '../planning/plan-pile.ts'
import type { Plans, Progress } from '../planning/plans.ts'
import type { ToPlan } from './to-plan.ts'

/** Proven; still at work; the time was up; it ended early; nothing found yet; not to be had; nothing to plan. */
export type PlanState = 'proven' | 'working' | 'open' | 'ended' | 'waiting' | 'failed' | 'empty'

/** A pile with its plan, as far as it is known. */
export interface AsPlanned {
  readonly asked: ToPlan
  readonly state: PlanState
  readonly best: Planned | null
}

function stateOf({ best, working }: Progress): PlanState {
  if (!best) return 'waiting'
  if (best.wrong !== null) return best.plan.supply.length > 0 ? 'ended' : 'failed'
  if (best.proven) return 'proven'
  return working ? 'working' : 'open'
}

function shown(asked: ToPlan, progress: Progress): AsPlanned {
  const state = stateOf(progress)
  return { asked, state, best: state === 'failed' ? null : progress.best }
}

export interface Time {
  /** How long is waited; left out: about a second. */
  readonly patienceMs?: number
  /** How long the planning may take; left out: its own time. */
  readonly budgetMs?: number
}

/** What the planning knows of a pile in that time. A planning that is too busy is a state, and no fault. */
export async function asPlanned(
  asked: ToPlan,
  plans: Plans,
  { patienceMs, budgetMs }: Time = {},
): Promise<AsPlanned> {
  if (!asked.pile) return { asked, state: 'empty', best: null }
  try {
    return shown(asked, await plans.of(asked.pile, patienceMs, budgetMs))
  } catch (error) {
    if (error instanceof Failure && error.code === 'busy') {
      return { asked, state: 'failed', best: null }
    }
    throw error
  }
}

/** What the planning knows of a pile at this moment; nothing is begun. */
export function asKnown(asked: ToPlan, plans: Pick<Plans, 'known'>): AsPlanned {
  if (!asked.pile) return { asked, state: 'empty', best: null }
  const progress = plans.known(asked.pile)
  return progress ? shown(asked, progress) : { asked, state: 'waiting', best: null }
}
