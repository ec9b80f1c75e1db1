import { Failure } from '../base/failures.ts'
import { acceptBytes } from './accept.ts'
import type { SafePhoto } from './safe.ts'
import { startWorker, type Worker } from './worker-process.ts'

export interface Lane {
  /**
   * The photo made safe, in the one process that may die of it. Throws what was wrong with the
   * file (see `accept`), `busy` when too many wait, `photo_failed` when the process died or was slow.
   */
  makeSafe(bytes: Uint8Array): Promise<SafePhoto>
  /** Ends the process; what still waits fails with `photo_failed`. */
  close(): Promise<void>
}

export interface LaneOptions {
  /** How many photos may wait, the one at work included. */
  readonly most?: number
  /** How long one may take before its process is ended. */
  readonly limitMs?: number
  readonly start?: () => Worker
}

interface Waiting {
  readonly bytes: Uint8Array
  readonly resolve: (photo: SafePhoto) => void
  readonly reject: (failure: Failure) => void
}

/** One lane for the whole server: photos queue up for a single process, which starts when first needed. */
export function openLane(options: LaneOptions = {}): Lane {
  const { most = 16, limitMs = 30_000, start = startWorker } = options
  const queue: Waiting[] = []
  let worker: Worker | null = null
  let working = false
  let closed = false

  async function work(): Promise<void> {
    if (working) return
    working = true
    for (let next = queue[0]; next; next = queue[0]) {
      await settle(next)
      queue.shift()
    }
    working = false
  }

  async function settle({ bytes, resolve, reject }: Waiting): Promise<void> {
    if (closed) return reject(new Failure('photo_failed'))
    if (!worker?.alive()) worker = start()
    const done = await worker.ask({ bytes }, limitMs)
    if (!done) return reject(new Failure('photo_failed'))
    if ('photo' in done) return resolve(done.photo)
    reject(new Failure(done.code, done.details))
  }

  return {
    async makeSafe(bytes) {
      acceptBytes(bytes)
      if (queue.length >= most) throw new Failure('busy')
      return new Promise((resolve, reject) => {
        queue.push({ bytes, resolve, reject })
        void work()
      })
    },
    async close() {
      closed = true
      await worker?.end()
    },
  }
}
