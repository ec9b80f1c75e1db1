import { Failure } from '../base/failures.ts'
import type { Log } from '../base/log.ts'
import { acceptBytes } from './accept-bytes.ts'
import type { MarkedSheet } from './look/marked-sheet.ts'
import type { Sizes } from './look/measured.ts'
import type { SafePhoto } from './safe.ts'
import { type TurnsOptions, takeTurns } from './turns.ts'
import type { Done, Job, Looked, PhotoJob } from './work.ts'
import { startWorker } from './worker-process.ts'

export interface Lane {
  /**
   * The photo made safe, in the one process that may die of it. Throws what was wrong with the
   * file (see `accept`), `busy` when too many wait or the machine had too little time for it, `photo_failed` when
   * the process died of it or worked on it too long.
   */
  makeSafe(bytes: Uint8Array): Promise<SafePhoto>
  /** The same, and what the photo shows of a garment. */
  look(bytes: Uint8Array): Promise<Looked>
  /**
   * What a sheet tells whose corners a person marked on a safe picture; `focal35` as its own file told it, mm.
   * Throws `busy`, `photo_failed`, and why nothing is told: `corners_no_sheet`, `corners_not_that_sheet`,
   * `corners_other_sheet` {other}, `sheet_small`, `sheet_unsure`.
   */
  measure(picture: Uint8Array, marked: MarkedSheet, focal35: number | null): Promise<Sizes>
  /** How many photos wait, the one at work included. */
  waiting(): number
  /** Ends the process; what still waits is `busy`. */
  close(): Promise<void>
}

export type LaneOptions = Partial<TurnsOptions<Job, Done>> & { readonly log?: Pick<Log, 'warn'> }

/** One lane for the whole server: photos queue up for a single process, which starts when first needed. */
export function openLane({ log, ...options }: LaneOptions = {}): Lane {
  const start = () => startWorker<Job, Done>('worker')
  const turns = takeTurns<Job, Done>({ most: 24, limitMs: 30_000, start, ...options })
  const done = async (job: Job): Promise<Exclude<Done, { code: unknown }>> => {
    const answer = await turns.ask(job)
    if (!answer) {
      log?.warn(
        { bytes: 'bytes' in job ? job.bytes.length : 0 },
        'the process of photos died or was too slow',
      )
      throw new Failure('photo_failed')
    }
    if ('code' in answer) throw new Failure(answer.code, answer.details)
    return answer
  }
  const look = async (job: PhotoJob): Promise<Looked> => {
    acceptBytes(job.bytes)
    return (await done(job)) as Looked
  }
  return {
    makeSafe: async (bytes) => (await look({ bytes, looks: false })).photo,
    look: (bytes) => look({ bytes, looks: true }),
    measure: async (bytes, marked, focal35) =>
      ((await done({ bytes, marked, focal35 })) as { sizes: Sizes }).sizes,
    waiting: () => turns.waiting(),
    close: () => turns.close(),
  }
}
