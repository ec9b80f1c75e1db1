import { extname } from 'node:path'
import { Worker } from 'node:worker_threads'
import type { Said } from './answering.ts'

/** A thread for one kind of work, one job at a time. It starts with its first job, and again when it died. */
export interface Thread<Job, Told> {
  /**
   * Resolves when the job is done, its time is up or the thread died, to what went wrong, if anything; what
   * was told by then was heard. Not to be asked while a job is at work.
   */
  run(job: Job, limitMs: number, hear: (told: Told) => void): Promise<string | null>
  /** Ends the thread, whatever it does; nothing runs on it any more. */
  close(): Promise<void>
}

/** A file of this folder that a thread runs: a source in tests, a built one elsewhere. */
export const threadFile = (name: string): URL =>
  new URL(`./${name}${extname(import.meta.url)}`, import.meta.url)

/** For so long a thread may take to be ready, on a machine with much else to do. */
const startMs = 30_000

/**
 * Resolves when something is heard that `hear` gives an answer to, or the thread fails, to what went wrong;
 * with that it is of no more use.
 */
function heardFrom<Told>(
  worker: Worker,
  limitMs: number,
  hear: (said: Said<Told>) => { readonly wrong: string | null } | null,
): Promise<string | null> {
  return new Promise((resolve) => {
    const end = (wrong: string | null) => {
      clearTimeout(timer)
      worker.off('message', heard).off('error', fail).off('exit', exit)
      worker.unref()
      resolve(wrong)
    }
    const fail = (error: Error) => end(error.message)
    const exit = () => end('the thread ended')
    const heard = (said: Said<Told>) => {
      const ended = hear(said)
      if (ended) end(ended.wrong)
    }
    const timer = setTimeout(() => end('it took too long'), limitMs)
    worker.ref()
    worker.on('message', heard).once('error', fail).once('exit', exit)
  })
}

function runOn<Job, Told>(
  worker: Worker,
  job: Job,
  limitMs: number,
  hear: (told: Told) => void,
): Promise<string | null> {
  const ended = heardFrom<Told>(worker, limitMs, (said) => {
    if ('told' in said) hear(said.told)
    if ('failed' in said) return { wrong: said.failed }
    return 'done' in said ? { wrong: null } : null
  })
  worker.postMessage(job)
  return ended
}

/** `memoryMb`: a thread that wants more for its own values dies; left out: what Node allows. */
export function openThread<Job, Told>(file: URL, memoryMb?: number): Thread<Job, Told> {
  let worker: Worker | null = null
  let closed = false

  /** What went wrong with the start, if anything. */
  async function start(): Promise<string | null> {
    const fresh = new Worker(file, {
      ...(memoryMb && { resourceLimits: { maxOldGenerationSizeMb: memoryMb } }),
    })
    worker = fresh
    // Whoever waits learns of it from `heardFrom`; unheard, it would end the server.
    fresh.on('error', () => {})
    fresh.once('exit', () => {
      if (worker === fresh) worker = null
    })
    return heardFrom(fresh, startMs, (said) => ('ready' in said ? { wrong: null } : null))
  }

  return {
    async run(job, limitMs, hear) {
      if (closed) return 'the thread is closed'
      const notStarted = worker ? null : await start()
      // A thread may be gone between its last word and this turn.
      const wrong =
        notStarted ?? (worker ? await runOn(worker, job, limitMs, hear) : 'the thread ended')
      if (wrong === null) return null
      const dead = worker
      worker = null
      await dead?.terminate()
      return wrong
    },
    async close() {
      closed = true
      await worker?.terminate()
    },
  }
}
