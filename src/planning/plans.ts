import { canonical, sha256 } from '../base/ids.ts'
import type { Log } from '../base/log.ts'
import type { Pile } from '../quilt/plan/instance.ts'
import { openPlanningLane, type PlanningLane } from './lane.ts'
import { type Budget, type Planned, planPile } from './plan-pile.ts'

/** How far a pile's plan has come. */
export interface Progress {
  /** The best plan so far; null: nothing has been found yet. */
  readonly best: Planned | null
  /** It is being made better, or waits for its turn. */
  readonly working: boolean
}

/** Plans of piles, each made once: what is asked of the same pile again is there already. */
export interface Plans {
  /**
   * Answers within about a second with what is known by then, while the work goes on. Throws `busy`
   * when too many piles wait.
   */
  of(pile: Pile): Promise<Progress>
  /** Ends the planning, whatever it does. */
  close(): Promise<void>
}

export interface PlansOptions extends Budget {
  readonly log: Log
  readonly lane?: PlanningLane
  /** How many plans are kept; the one that was asked for longest ago goes first. */
  readonly most?: number
}

interface Kept {
  best: Planned | null
  working: boolean
  /** Resolves when there is a first plan; rejects where there will be none. */
  first: Promise<void>
}

/** Beyond the time that the first plan is given, for the way from the thread and back. */
const patienceMs = 200

/** For the log: sizes and sums, nothing of whose pile it is. */
function told({ pile, proven, worth }: Planned, startedAt: number) {
  const { V, Q, P, M } = worth
  const ms = Math.round(performance.now() - startedAt)
  return { planned: { garments: pile.garments.length, ms, proven, V, Q, P, M } }
}

function within(first: Promise<void>, ms: number): Promise<void> {
  let timer: NodeJS.Timeout | undefined
  const time = new Promise<void>((resolve) => {
    timer = setTimeout(resolve, ms)
  })
  return Promise.race([first, time]).finally(() => clearTimeout(timer))
}

export function openPlans(options: PlansOptions): Plans {
  const { log, lane = openPlanningLane(), most = 64, firstMs = 1000, budgetMs } = options
  const budget: Budget = budgetMs === undefined ? { firstMs } : { firstMs, budgetMs }
  const kept = new Map<string, Kept>()

  function forget(key: string, one: Kept): void {
    if (kept.get(key) === one) kept.delete(key)
  }

  /** A plan whose thread died is not kept: whoever asks again has it made anew. */
  function ended(key: string, one: Kept, startedAt: number): void {
    log.info(told(one.best!, startedAt), 'planned')
    const { wrong } = one.best!
    if (wrong === null) return
    log.warn({ planning: wrong }, 'planning ended early')
    forget(key, one)
  }

  async function work(pile: Pile, heard: (planned: Planned) => void): Promise<void> {
    for await (const planned of planPile(pile, lane, budget)) heard(planned)
  }

  function start(key: string, pile: Pile): Kept {
    const startedAt = performance.now()
    const one: Kept = { best: null, working: true, first: Promise.resolve() }
    one.first = new Promise((resolve, reject) => {
      const heard = (planned: Planned) => {
        one.best = planned
        resolve()
      }
      work(pile, heard)
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
    return one
  }

  return {
    async of(pile) {
      const key = sha256(canonical(pile))
      const one = kept.get(key) ?? start(key, pile)
      kept.delete(key)
      kept.set(key, one)
      const [oldest] = kept.keys()
      if (kept.size > most) kept.delete(oldest!)
      if (one.best === null) await within(one.first, firstMs + patienceMs)
      return { best: one.best, working: one.working }
    },
    close: () => lane.close(),
  }
}
