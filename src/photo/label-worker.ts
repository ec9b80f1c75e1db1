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

export type LabelDone =
  | { readonly words: LabelWords | null }
  /** Why no words can be read here, or not on this photo. */
  | { readonly absent: string }
  | { readonly unread: string }

sharp.cache(false)
sharp.concurrency(1)
sharp.block({ operation: ['VipsForeignLoad'] })
sharp.unblock({ operation: ['VipsForeignLoadJpegBuffer'] })

let loading: Promise<Models> | undefined

const said = (error: unknown): string => (error instanceof Error ? error.message : String(error))

async function run({ jpeg }: LabelJob): Promise<LabelDone> {
  loading ??= loadModels()
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

process.on('message', async (job: LabelJob) => process.send?.(await run(job)))
// The server decides when to stop; a key press in its terminal reaches this process too.
process.on('SIGINT', () => {})
process.on('disconnect', () => process.exit())
