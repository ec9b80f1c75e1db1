import type { Log } from '../base/log.ts'
import type { LaidQuilt, LayJob } from '../quilt/place/lay-quilt.ts'
import { openPanels, type Panels } from './panels.ts'
import type { PlanJob } from './plan-worker.ts'
import type { PilePlan } from './search.ts'
import { openThread, threadFile } from './thread.ts'
import { takingTurns } from './turns.ts'

/**
 * The threads of the planning: one plans piles, one looks at panels, one lays quilts. Each starts when it
 * is needed, and again when it died.
 */
export interface PlanningLane {
  /**
   * Resolves when the pile is planned, its time is up or its thread died, to what went wrong, if anything;
   * what was found by then was told. For the first part of its time it waits for panels that are not
   * known. Throws `busy` when too many wait.
   */
  plan(job: PlanJob, tell: (plan: PilePlan) => void): Promise<string | null>
  /** Lays a quilt. Throws `busy` when too many wait, and what went wrong. */
  lay(job: LayJob): Promise<LaidQuilt>
  readonly panels: Panels
  /** How many piles and quilts wait, those at work included. */
  waiting(): number
  /** Ends the threads, whatever they do. */
  close(): Promise<void>
}

export interface LaneOptions {
  readonly log?: Log
  /** How many piles may wait, the one at work included; and how many quilts. */
  readonly most?: number
  /** How much longer than its budget a pile may take before the thread is ended. */
  readonly graceMs?: number
  /** A panel that takes longer is given up. */
  readonly panelMs?: number
  /** A quilt that takes longer to lay is given up. */
  readonly layMs?: number
  /** What the threads run. */
  readonly file?: URL
  readonly panelFile?: URL
  readonly layFile?: URL
}

/** Panels are waited for during this share of the time at most. */
const lookingShare = 0.5

export function openPlanningLane({
  log,
  most = 32,
  graceMs = 2000,
  panelMs = 20_000,
  layMs = 20_000,
  file = threadFile('plan-worker'),
  panelFile = threadFile('panel-worker'),
  layFile = threadFile('lay-worker'),
}: LaneOptions = {}): PlanningLane {
  const panels = openPanels({ log, file: panelFile, limitMs: panelMs })
  const planning = openThread<PlanJob, PilePlan>(file)
  const laying = openThread<LayJob, LaidQuilt>(layFile)
  const toPlan = takingTurns(most)
  const toLay = takingTurns(most)

  return {
    plan: ({ pile, budgetMs }, tell) =>
      toPlan.take(async (turn) => {
        const startedAt = performance.now()
        const goOn = panels.hold()
        try {
          await panels.look(pile, budgetMs * lookingShare)
          const left = budgetMs - (performance.now() - startedAt)
          return await turn(() => {
            const job = { pile: panels.withKnown(pile), budgetMs: left }
            return planning.run(job, left + graceMs, tell)
          })
        } finally {
          goOn()
        }
      }),
    lay: (job) =>
      toLay.take((turn) =>
        turn(async () => {
          let laid: LaidQuilt | null = null
          const wrong = await laying.run(job, layMs, (found) => {
            laid = found
          })
          if (!laid) throw new Error(`a quilt was not laid: ${wrong}`)
          return laid
        }),
      ),
    panels,
    waiting: () => toPlan.waiting() + toLay.waiting(),
    async close() {
      await Promise.all([panels.close(), planning.close(), laying.close()])
    },
  }
}
