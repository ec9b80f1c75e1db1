import { setTimeout } from 'node:timers/promises'
import { Failure } from '../base/failures.ts'
import type { Otherwise } from '../intake/priced.ts'
import type { Planned } from '../planning/plan-pile.ts'
import type { Plans, Progress } from '../planning/plans.ts'
import {
  type Change,
  oneFewer,
  oneMoreGarment,
  ruleCosts,
  type Saved,
  savingsOf,
} from '../planning/what-if.ts'
import type { Pile as PileToPlan } from '../quilt/plan/instance.ts'
import { type PriceChange, priceChange } from '../quilt/price-change.ts'
import { declinedOf, verdictsOf } from './consequences.ts'
import { nextNumber, type Reviewed, settled } from './what-if.ts'

/** What a change of a planned pile saves, and what it does to the likely price. */
export interface PricedSaving extends Saved {
  readonly price: PriceChange | null
}

export interface PricedSavings {
  /** Those that save anything; what saves most of the price first. */
  readonly found: readonly PricedSaving[]
  /** So many changes are not planned yet. */
  readonly left: number
}

/** What a change saves is no reason to keep others waiting: its plan is given less time than a pile's. */
const budgetMs = 2000

/** A plan that is at work is looked at as often as this. */
const everyMs = 50

/** A plan that does not change any more; null: there is none by `until`, on the clock of `performance`. */
async function finishedPlan(
  pile: PileToPlan,
  plans: Plans,
  until: number,
): Promise<Planned | null> {
  const left = () => until - performance.now()
  let progress: Progress | null
  try {
    progress = await plans.of(pile, Math.max(0, left()), budgetMs)
  } catch (error) {
    if (error instanceof Failure && error.code === 'busy') return null
    throw error
  }
  while (progress?.working && left() > 0) {
    await setTimeout(everyMs)
    progress = plans.known(pile)
  }
  const best = progress?.working ? null : progress?.best
  return best && best.wrong === null ? best : null
}

/** What a rule asks for is not saved by letting go of it. */
const isSaving = ({ change, saves }: Saved, price: PriceChange | null): boolean =>
  (saves.garments > 0 && !(change.change === 'rule' && change.rule === 'must')) ||
  saves.steps > 0 ||
  (saves.steps === 0 && saves.pieces > 0) ||
  (price !== null && price.totalMinor < 0)

/** What a change makes of the pile that is priced. */
function otherwiseOf(change: Change, declined: readonly number[]): Otherwise {
  return {
    without: change.change === 'without' ? [...declined, Number(change.garment)] : declined,
    more:
      change.change === 'more' ? [{ n: Number(change.garment), like: Number(change.like) }] : [],
  }
}

/**
 * What would save cloth or money: rules let go of, one more garment, one fewer. As far as that is planned
 * within `patienceMs`; whoever asks again gets further.
 */
export async function pricedSavings(
  reviewed: Reviewed,
  planned: Planned,
  plans: Plans,
  patienceMs: number,
): Promise<PricedSavings> {
  const until = performance.now() + patienceMs
  const changes = [
    ...ruleCosts(planned),
    ...oneMoreGarment(planned, nextNumber(reviewed)),
    ...oneFewer(planned),
  ]
  const { found, left } = await savingsOf(planned, changes, (pile) =>
    finishedPlan(pile, plans, until),
  )
  const declined = declinedOf(verdictsOf(reviewed.garments))
  const priceOf = (one: Planned, otherwise: Otherwise = { without: declined }) =>
    reviewed.pile.priced(settled(one), otherwise)
  const before = priceOf(planned)
  const priced = found.map((one) => {
    const after = priceOf(one.after, otherwiseOf(one.change, declined))
    return { ...one, price: before && after && priceChange(before, after) }
  })
  return {
    found: priced
      .filter((one) => isSaving(one, one.price))
      .sort((a, b) => (a.price?.totalMinor ?? 0) - (b.price?.totalMinor ?? 0)),
    left,
  }
}
