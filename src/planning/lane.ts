import { extname } from 'node:path'
import { Worker } from 'node:worker_threads'
import { Failure } from '../base/failures.ts'
import type { PilePlan } from './search.ts'
import type { Job, Said } from './worker.ts'

/** One thread for all planning: piles queue up for it, and it starts again when it died. */
export interface PlanningLane {
  /**
   * Resolves when the pile is planned, its time is up or its thread died, to what went wrong, if anything;
   * what was found by then was told. Throws `busy` when too many wait.
   */
  plan(job: Job, tell: (plan: PilePlan) => void): Promise<string | null>
  /** Ends the thread, whatever it does. */
  close(): Promise<void>
}

export interface LaneOptions {
  /** How many piles may wait, the one at work included. */
  readonly most?: number
  /** How much longer than its budget a pile may take before the thread is ended. */
  readonly graceMs?: number
  /** What the thread runs. */
  readonly file?: URL
}

/** The same kind of file as this one: the sources in tests, the built files elsewhere. */
const workerFile = new URL(`./worker${extname(import.meta.url)}`, import.meta.url)

/** Resolves to what went wrong; after that the thread is of no more use. */
function runOn(
  worker: Worker,
  job: Job,
  tell: (plan: PilePlan) => void,
  limitMs: number,
): Promise<string | null> {
  return new Promise((resolve) => {
    const end = (wrong: string | null) => {
      clearTimeout(timer)
      worker.off('message', hear).off('error', fail).off('exit', exit)
      worker.unref()
      resolve(wrong)
    }
    const fail = (error: Error) => end(error.message)
    const exit = () => end('the thread ended')
    const hear = (said: Said) => {
      if ('plan' in said) tell(said.plan)
      else end('failed' in said ? said.failed : null)
    }
    const timer = setTimeout(() => end('it took too long'), limitMs)
    worker.ref()
    worker.on('message', hear).once('error', fail).once('exit', exit)
    worker.postMessage(job)
  })
}

export function openPlanningLane(options: LaneOptions = {}): PlanningLane {
  const { most = 32, graceMs = 2000, file = workerFile } = options
  let worker: Worker | null = null
  let waiting = 0
  let last: Promise<unknown> = Promise.resolve()
  let closed = false

  function started(): Worker {
    const fresh = new Worker(file)
    // Whoever waits learns of it from `runOn`; unheard, it would end the server.
    fresh.on('error', () => {})
    return fresh
  }

  async function work(job: Job, tell: (plan: PilePlan) => void): Promise<string | null> {
    if (closed) return 'the lane is closed'
    worker ??= started()
    const wrong = await runOn(worker, job, tell, job.budgetMs + graceMs)
    if (wrong === null) return null
    const dead = worker
    worker = null
    await dead.terminate()
    return wrong
  }

  return {
    async plan(job, tell) {
      if (waiting >= most) throw new Failure('busy')
      waiting += 1
      const turn = last.then(() => work(job, tell))
      last = turn
      try {
        return await turn
      } finally {
        waiting -= 1
      }
    },
    async close() {
      closed = true
      await worker?.terminate()
    },
  }
}
