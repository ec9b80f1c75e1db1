/** The process that `label-lane.ts` forks: reads the words on one photo of a label at a time. */
import sharp from 'sharp'
import { labelSense } from '../textile/label-sense.ts'
import type { LabelWords } from './label-words.ts'
import { loadModels, type Models } from './words/models.ts'
import { readWords } from './words/read.ts'

/** A photo that was made safe; null asks only whether words can be read here. */
export interface LabelJob {
  readonly jpeg: Uint8Array | null
}

type Outcome =
  | { readonly words: LabelWords | null }
  /** Why no words can be read here, or not on this photo. */
  | { readonly absent: string }
  | { readonly unread: string }

/** `held`: what the process holds in memory when it answers, bytes. */
export type LabelDone = Outcome & { readonly held: number }

sharp.cache(false)
sharp.concurrency(1)
sharp.block({ operation: ['VipsForeignLoad'] })
sharp.unblock({ operation: ['VipsForeignLoadJpegBuffer'] })

// At once, not with the first photo: a process that takes another's place is ready when one comes.
const loading: Promise<Models> = loadModels()
// Whoever asks is told.
loading.catch(() => {})

const said = (error: unknown): string => (error instanceof Error ? error.message : String(error))

async function run({ jpeg }: LabelJob): Promise<Outcome> {
  let models: Models
  try {
    models = await loading
  } catch (error) {
    return { absent: said(error) }
  }
  try {
    return { words: jpeg && (await readWords(jpeg, models, labelSense)) }
  } catch (error) {
    return { unread: said(error) }
  }
}

async function answer(job: LabelJob): Promise<LabelDone> {
  const outcome = await run(job)
  return { ...outcome, held: process.memoryUsage.rss() }
}

process.on('message', async (job: LabelJob) => process.send?.(await answer(job)))
// The server decides when to stop; a key press in its terminal reaches this process too.
process.on('SIGINT', () => {})
process.on('disconnect', () => process.exit())
