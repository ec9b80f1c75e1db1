import { canonical, sha256 } from '../base/ids.ts'
import type { Log } from '../base/log.ts'
import type { LayJob } from '../quilt/place/lay-quilt.ts'
import type { Pile } from '../quilt/plan/instance.ts'
import type { PanelCut } from '../quilt/plan/plan.ts'
import { Kept } from './kept.ts'
import { openPlanningLane, type PlanningLane } from './lane.ts'
import { type Laying, openLaidQuilts } from './laying.ts'
import type { CutLists } from './panels.ts'
import { type Budget, type Planned, planPile, usualBudget } from './plan-pile.ts'
import { within } from './within.ts'

/** How far a pile's plan has come. */
export interface Progress {
  /** The best plan so far; null: nothing has been found yet. */
  readonly best: Planned | null
  /** It is being made better, or waits for its turn or its panels. */
  readonly working: boolean
}

/**
 * Plans of piles and what follows from them, each made once: what is asked of the same again is there
 * already. Nobody waits longer than `patienceMs`, left out: than about a second; the work goes on.
 */
export interface Plans {
  /**
   * What is known once there is a first plan. A plan for which panels were looked at in a hurry is made anew
   * when it is asked for and more of them are known; so is one that `budgetMs` did not suffice to prove, for
   * who gives it more. Throws `busy` when too many piles wait.
   */
  of(pile: Pile, patienceMs?: number, budgetMs?: number): Promise<Progress>
  /** What is known now, or null; nothing is begun. */
  known(pile: Pile): Progress | null
  /** Has the pile's panels looked at, when nothing else is to be done. */
  warm(pile: Pile): void
  /** How to make the cuts of a pile's plan. */
  cutLists(pile: Pile, cuts: readonly PanelCut[], patienceMs?: number): Promise<CutLists>
  /** A quilt laid; one that fails, or is too many, is told to the log and laid anew when it is asked for again. */
  laid(job: LayJob, patienceMs?: number): Promise<Laying>
  /** How many piles and quilts wait to be planned and laid, those at work included. */
  waiting(): number
  /** Ends the work, whatever it is at. */
  close(): Promise<void>
}

export interface PlansOptions extends Budget {
  readonly log: Log
  readonly lane?: PlanningLane
  /** How many plans are kept; the one that was asked for longest ago goes first. As many laid quilts. */
  readonly most?: number
}

interface One {
  best: Planned | null
  working: boolean
  readonly budgetMs: number
  /** Resolves when there is a first plan; rejects where there will be none. */
  first: Promise<void>
}

/** Beyond the time that the first plan is given, for the way from the thread and back. */
const wayMs = 200

/** For the log: sizes and sums, nothing of whose pile it is. */
function told({ pile, proven, worth, hurried }: Planned, startedAt: number) {
  const { V, Q, P, M } = worth
  const ms = Math.round(performance.now() - startedAt)
  return { planned: { garments: pile.garments.length, ms, proven, hurried, V, Q, P, M } }
}

export function openPlans(options: PlansOptions): Plans {
  const { log, most = 64 } = options
  const { firstMs, budgetMs: usualBudgetMs } = { ...usualBudget, ...options }
  const { lane = openPlanningLane({ log }) } = options
  const { panels } = lane
  const usualMs = firstMs + wayMs
  const kept = new Kept<One>(most)
  const laid = openLaidQuilts(lane, log, most)

  const keyOf = (pile: Pile): string => sha256(canonical(pile))

  function forget(key: string, one: One): void {
    if (kept.look(key) === one) kept.delete(key)
  }

  /** A plan whose thread died is not kept: whoever asks again has it made anew. */
  function ended(key: string, one: One, startedAt: number): void {
    log.info(told(one.best!, startedAt), 'planned')
    const { wrong } = one.best!
    if (wrong === null) return
    log.warn({ planning: wrong }, 'planning ended early')
    forget(key, one)
  }

  async function work(
    pile: Pile,
    budgetMs: number,
    heard: (planned: Planned) => void,
  ): Promise<void> {
    for await (const planned of planPile(pile, lane, { firstMs, budgetMs })) heard(planned)
  }

  /** `before`: a plan that is shown until there is a better one. */
  function start(pile: Pile, budgetMs: number, key: string, before: Planned | null): One {
    const startedAt = performance.now()
    const one: One = { best: before, working: true, budgetMs, first: Promise.resolve() }
    one.first = new Promise((resolve, reject) => {
      const heard = (planned: Planned) => {
        one.best = planned
        resolve()
      }
      work(pile, budgetMs, heard)
        .then(
          () => ended(key, one, startedAt),
          (error: unknown) => {
            log.warn({ err: error }, 'not planned')
            forget(key, one)
            reject(error)
          },
        )
        .finally(() => {
          one.working = false
        })
    })
    // Nobody may be waiting any more when it fails.
    one.first.catch(() => {})
    kept.set(key, one)
    return one
  }

  const waitsForPanels = ({ best }: One, pile: Pile): boolean =>
    best !== null && best.hurried > 0 && panels.waits(pile)

  /** Nothing is left to look at, and more is known than when it was planned. */
  const isBehind = ({ hurried }: Planned, pile: Pile): boolean =>
    panels.missing(pile) < hurried && !panels.waits(pile)

  /** More is known than when it was planned, or there is more time. */
  const isOutdated = ({ best, working, budgetMs }: One, pile: Pile, most: number): boolean =>
    !working && best !== null && (isBehind(best, pile) || (!best.proven && budgetMs < most))

  const progress = (one: One, pile: Pile): Progress => ({
    best: one.best,
    working: one.working || waitsForPanels(one, pile),
  })

  return {
    async of(pile, patienceMs = usualMs, budgetMs = usualBudgetMs) {
      const key = keyOf(pile)
      const found = kept.get(key)
      const one =
        found && !isOutdated(found, pile, budgetMs)
          ? found
          : start(pile, budgetMs, key, found?.best ?? null)
      if (one.best !== null && one.best.hurried > 0) panels.warm(pile)
      if (one.best === null) await within(one.first, patienceMs)
      return progress(one, pile)
    },
    known(pile) {
      const one = kept.look(keyOf(pile))
      return one ? progress(one, pile) : null
    },
    warm: (pile) => panels.warm(pile),
    cutLists: (pile, cuts, patienceMs = usualMs) => panels.cutLists(pile, cuts, patienceMs),
    laid: (job, patienceMs = usualMs) => laid(job, patienceMs),
    waiting: () => lane.waiting(),
    close: () => lane.close(),
  }
}
