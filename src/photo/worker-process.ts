import { type ChildProcess, fork, type Serializable } from 'node:child_process'
import { once } from 'node:events'
import { extname } from 'node:path'

export interface Worker<Job, Done> {
  /** The answer, or null if the process ended instead; it is ended when `limitMs` have passed. */
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
  const timer = setTimeout(() => child.kill('SIGKILL'), limitMs)
  const answered = once(child, 'message', { signal }).then(([done]) => done as Done)
  const ended = once(child, 'exit', { signal }).then(() => null)
  child.send(job as Serializable, () => {})
  try {
    // `once` fails when the process could not be started or spoken to.
    return await Promise.race([answered, ended])
  } catch {
    return null
  } finally {
    clearTimeout(timer)
    settled.abort()
    release(child)
  }
}
