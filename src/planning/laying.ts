import { canonical, sha256 } from '../base/ids.ts'
import type { Log } from '../base/log.ts'
import type { LaidQuilt, LayJob } from '../quilt/place/lay-quilt.ts'
import { Kept } from './kept.ts'
import type { PlanningLane } from './lane.ts'
import { within } from './within.ts'

/** How far the laying of a quilt has come. */
export interface Laying {
  /** Null: not laid yet; or, where nothing is at work any more, not to be had now. */
  readonly laid: LaidQuilt | null
  readonly working: boolean
}

interface One {
  laid: LaidQuilt | null
  working: boolean
  done: Promise<unknown>
}

/** Quilts laid, each once: what is asked of the same job again is there already. */
export type LaidQuilts = (job: LayJob, patienceMs: number) => Promise<Laying>

export function openLaidQuilts(lane: PlanningLane, log: Log, most: number): LaidQuilts {
  const kept = new Kept<One>(most)

  /** A quilt that failed is not kept: whoever asks again has it laid anew. */
  function start(key: string, job: LayJob): One {
    const startedAt = performance.now()
    const one: One = { laid: null, working: true, done: Promise.resolve() }
    one.done = lane
      .lay(job)
      .then(
        (laid) => {
          one.laid = laid
          const ms = Math.round(performance.now() - startedAt)
          const { touching, proven } = laid
          log.info({ laid: { pieces: job.pieces.length, ms, touching, proven } }, 'laid')
        },
        (error: unknown) => {
          if (kept.look(key) === one) kept.delete(key)
          log.warn({ err: error }, 'not laid')
        },
      )
      .finally(() => {
        one.working = false
      })
    return one
  }

  return async (job, patienceMs) => {
    const key = sha256(canonical(job))
    const known = kept.get(key)
    const one = known ?? start(key, job)
    if (!known) kept.set(key, one)
    if (one.working) await within(one.done, patienceMs)
    return { laid: one.laid, working: one.working }
  }
}
