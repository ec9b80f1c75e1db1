import { type ChildProcess, fork, type Serializable } from 'node:child_process'
import { once } from 'node:events'
import { readFileSync } from 'node:fs'
import { extname } from 'node:path'
import { Failure } from '../base/failures.ts'

export interface Worker<Job, Done> {
  /**
   * The answer, or null if the process ended instead; it is ended when `limitMs` have passed. Throws `busy` where
   * they passed because the machine had too little time for it: the same job may well be done later.
   */
  ask(job: Job, limitMs: number): Promise<Done | null>
  alive(): boolean
  /** The system's number of the process; undefined where it could not be started. */
  readonly pid: number | undefined
  end(): Promise<void>
}

/**
 * For glibc's allocator (mallopt(3)): large blocks go back to the system at once, and threads share their stores.
 * Without it a process that works on pictures of many sizes holds twice as much memory, and ever more.
 */
export const workerMemory = {
  MALLOC_ARENA_MAX: '2',
  MALLOC_MMAP_THRESHOLD_: String(16 * 1024 * 1024),
}

/** All it needs from the environment: it shares none of the server's secrets. */
const passedOn = ['PATH', 'LD_LIBRARY_PATH', 'TMPDIR', 'SystemRoot']

/** Starts the file of that name beside this one, of the same kind: the sources in tests, the built files elsewhere. */
export function startWorker<Job, Done>(
  name: 'worker' | 'painter' | 'label-worker',
): Worker<Job, Done> {
  const file = new URL(`./${name}${extname(import.meta.url)}`, import.meta.url)
  const env = Object.fromEntries(passedOn.map((name) => [name, process.env[name]]))
  const child = fork(file, {
    env: { ...env, ...workerMemory, VIPS_WARNING: '0' },
    serialization: 'advanced',
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
  })
  // Whoever asks learns of it from `ask`; unheard, it would end the server.
  child.on('error', () => {})
  release(child)
  return {
    ask: (job, limitMs) => ask(child, job, limitMs),
    alive: () => child.connected,
    pid: child.pid,
    async end() {
      if (!child.connected) return
      child.ref()
      const ended = once(child, 'exit')
      child.kill('SIGKILL')
      await ended
    },
  }
}

/** An idle process does not keep this one going. */
function release(child: ChildProcess): void {
  child.unref()
  child.channel?.unref()
}

/** Of proc(5); Linux counts them a hundred to the second. */
const tickMs = 10

/** The processor's time that a process has had, ms; null where the system does not tell, which Linux alone does. */
function processorMs(pid: number | undefined): number | null {
  try {
    const line = readFileSync(`/proc/${pid}/stat`, 'utf8')
    // The name in brackets may hold anything; after it utime and stime are the 12th and 13th.
    const after = line.slice(line.lastIndexOf(')') + 2).split(' ')
    return (Number(after[11]) + Number(after[12])) * tickMs
  } catch {
    return null
  }
}

/** Whether a process that ran out of time had been given less than half of it, ms. */
export const wasStarved = (before: number | null, now: number | null, limitMs: number): boolean =>
  before !== null && now !== null && now - before < limitMs / 2

/** While a job runs it keeps this process going. */
async function ask<Job, Done>(
  child: ChildProcess,
  job: Job,
  limitMs: number,
): Promise<Done | null> {
  child.ref()
  child.channel?.ref()
  const settled = new AbortController()
  const { signal } = settled
  const before = processorMs(child.pid)
  let starved = false
  const timer = setTimeout(() => {
    starved = wasStarved(before, processorMs(child.pid), limitMs)
    child.kill('SIGKILL')
  }, limitMs)
  const answered = once(child, 'message', { signal }).then(([done]) => done as Done)
  const ended = once(child, 'exit', { signal }).then(() => null)
  child.send(job as Serializable, () => {})
  try {
    // `once` fails when the process could not be started or spoken to.
    const done = await Promise.race([answered, ended])
    if (done === null && starved) throw new Failure('busy')
    return done
  } catch (error) {
    if (error instanceof Failure) throw error
    return null
  } finally {
    clearTimeout(timer)
    settled.abort()
    release(child)
  }
}
