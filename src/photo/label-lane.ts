import { Failure } from '../base/failures.ts'
import type { LabelReader } from './label-words.ts'
import type { LabelDone, LabelJob } from './label-worker.ts'
import { type TurnsOptions, takeTurns } from './turns.ts'
import { startWorker } from './worker-process.ts'

export type LabelLaneOptions = Partial<TurnsOptions<LabelJob, LabelDone>> & {
  /** How long the server runs before its reader loads, if nobody has a label read before. */
  readonly loadAfterMs?: number
  /** Told once where words cannot be read here, with the reason. */
  readonly onAbsent?: (why: string) => void
}

/** A server that starts has other things to do first: the reader takes seconds to load, and memory. */
const loadAfter = 15_000

/**
 * A process that holds more than this after a reading, bytes, is replaced: photos of many sizes leave gaps in its
 * memory, and it would hold ever more. Most hold less, and a new one is ready in half a second.
 */
const mostHeld = 450e6

/** One reader for the whole server, in one process, which starts when first needed and again when it has died. */
export function openLabelReader(options: LabelLaneOptions = {}): LabelReader {
  const { onAbsent, loadAfterMs = loadAfter, ...ofTurns } = options
  const start = () => startWorker<LabelJob, LabelDone>('label-worker')
  const isSpent = ({ held }: LabelDone) => held > mostHeld
  const defaults = { most: 8, limitMs: 60_000, start, isSpent }
  const turns = takeTurns<LabelJob, LabelDone>({ ...defaults, ...ofTurns })
  let state: ReturnType<LabelReader['state']> = 'starting'

  async function ask(job: LabelJob): Promise<LabelDone | null> {
    const done = await turns.ask(job)
    if (done && 'absent' in done) {
      if (state !== 'absent') onAbsent?.(done.absent)
      state = 'absent'
    } else if (done) state = 'ready'
    return done
  }

  const loading = setTimeout(() => void ask({ jpeg: null }).catch(() => {}), loadAfterMs)
  loading.unref()
  return {
    state: () => state,
    async read(jpeg) {
      clearTimeout(loading)
      if (state === 'absent') throw new Failure('label_unread')
      const done = await ask({ jpeg })
      if (!done || !('words' in done) || !done.words) throw new Failure('label_unread')
      return done.words
    },
    async close() {
      clearTimeout(loading)
      await turns.close()
    },
  }
}
