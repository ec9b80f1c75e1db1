import { Failure } from '../base/failures.ts'
import { acceptBytes } from './accept.ts'
import type { Look } from './look/looked.ts'
import type { SafePhoto } from './safe.ts'
import { type TurnsOptions, takeTurns } from './turns.ts'
import type { Done, Job } from './work.ts'
import { startWorker } from './worker-process.ts'

export interface Looked {
  readonly photo: SafePhoto
  /** Null: the photo was made safe alone. */
  readonly look: Look | null
}

export interface Lane {
  /**
   * The photo made safe, in the one process that may die of it. Throws what was wrong with the
   * file (see `accept`), `busy` when too many wait, `photo_failed` when the process died or was slow.
   */
  makeSafe(bytes: Uint8Array): Promise<SafePhoto>
  /** The same, and what the photo shows of a garment. */
  look(bytes: Uint8Array): Promise<Looked>
  /** Ends the process; what still waits fails with `photo_failed`. */
  close(): Promise<void>
}

export type LaneOptions = Partial<TurnsOptions<Job, Done>>

/** One lane for the whole server: photos queue up for a single process, which starts when first needed. */
export function openLane(options: LaneOptions = {}): Lane {
  const start = () => startWorker<Job, Done>('worker')
  const turns = takeTurns<Job, Done>({ most: 24, limitMs: 30_000, start, ...options })
  const ask = async (job: Job): Promise<Looked> => {
    acceptBytes(job.bytes)
    const done = await turns.ask(job)
    if (!done) throw new Failure('photo_failed')
    if ('photo' in done) return done
    throw new Failure(done.code, done.details)
  }
  return {
    makeSafe: async (bytes) => (await ask({ bytes, looks: false })).photo,
    look: (bytes) => ask({ bytes, looks: true }),
    close: () => turns.close(),
  }
}
