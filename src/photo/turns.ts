import { Failure } from '../base/failures.ts'
import type { Worker } from './worker-process.ts'

/** Jobs that take turns in one process, which starts when first needed and again when it has died or is spent. */
export interface Turns<Job, Done> {
  /**
   * Null: the process died of the job or worked on it too long. Throws `busy` when too many wait, when the machine had
   * too little time for the job, or when the turns are closed.
   */
  ask(job: Job): Promise<Done | null>
  /** How many jobs wait, the one at work included. */
  waiting(): number
  /** Ends the process; what still waits is `busy`: another server may do it, or this one once it is back. */
  close(): Promise<void>
}

export interface TurnsOptions<Job, Done> {
  /** How many jobs may wait, the one at work included. */
  readonly most: number
  /** How long one may take before its process is ended. */
  readonly limitMs: number
  readonly start: () => Worker<Job, Done>
  /** Whether the process that gave this answer is better ended, and another started, before the next job. */
  readonly isSpent?: (done: Done) => boolean
}

interface Waiting<Job, Done> {
  readonly job: Job
  readonly resolve: (done: Done | null) => void
  readonly reject: (error: unknown) => void
}

export function takeTurns<Job, Done>(options: TurnsOptions<Job, Done>): Turns<Job, Done> {
  const { most, limitMs, start, isSpent = () => false } = options
  const queue: Waiting<Job, Done>[] = []
  let worker: Worker<Job, Done> | null = null
  let working = false
  let closed = false

  async function work(): Promise<void> {
    if (working) return
    working = true
    for (let next = queue[0]; next; next = queue[0]) {
      const { resolve, reject } = next
      const done = await answer(next.job).then(
        (one) => {
          resolve(one)
          return one
        },
        (error: unknown) => {
          reject(error)
          return null
        },
      )
      queue.shift()
      if (done !== null && isSpent(done)) await renew()
    }
    working = false
  }

  /** The old process is gone before the new one starts: together they would hold twice the memory. */
  async function renew(): Promise<void> {
    await worker?.end()
    if (!closed) worker = start()
  }

  async function answer(job: Job): Promise<Done | null> {
    if (closed) throw new Failure('busy')
    if (!worker?.alive()) worker = start()
    const done = await worker.ask(job, limitMs)
    if (done === null && closed) throw new Failure('busy')
    return done
  }

  return {
    ask: (job) =>
      new Promise((resolve, reject) => {
        if (queue.length >= most) return reject(new Failure('busy'))
        queue.push({ job, resolve, reject })
        void work()
      }),
    waiting: () => queue.length,
    async close() {
      closed = true
      await worker?.end()
    },
  }
}
