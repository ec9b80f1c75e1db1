/** The process that `lane.ts` forks: takes one photo at a time and answers with it made safe. */
import sharp from 'sharp'
import { Failure, type FailureCode } from '../base/failures.ts'
import { lookAt } from './look/look.ts'
import type { Look } from './look/looked.ts'
import { makeSafe, type SafePhoto } from './safe.ts'

export interface Job {
  readonly bytes: Uint8Array
  /** Whether to look at the garment that it shows. */
  readonly looks: boolean
}

export type Done =
  | { readonly photo: SafePhoto; readonly look: Look | null }
  | { readonly code: FailureCode; readonly details: Failure['details'] }

sharp.cache(false)
sharp.concurrency(1)
// Whatever a file claims to be, no other reader of the library is ever started on it.
sharp.block({ operation: ['VipsForeignLoad'] })
sharp.unblock({
  operation: [
    'VipsForeignLoadJpegBuffer',
    'VipsForeignLoadPngBuffer',
    'VipsForeignLoadWebpBuffer',
    'VipsForeignLoadHeifBuffer',
  ],
})

/** A look that fails costs no photo. */
async function lookOrNot(jpeg: Uint8Array): Promise<Look | null> {
  try {
    return await lookAt(jpeg)
  } catch (error) {
    const line = {
      level: 50,
      time: Date.now(),
      msg: 'a photo was not looked at',
      err: String(error),
    }
    process.stderr.write(`${JSON.stringify(line)}\n`)
    return null
  }
}

async function run({ bytes, looks }: Job): Promise<Done> {
  try {
    const photo = await makeSafe(bytes)
    return { photo, look: looks ? await lookOrNot(photo.full) : null }
  } catch (error) {
    if (!(error instanceof Failure)) throw error
    return { code: error.code, details: error.details }
  }
}

process.on('message', async (job: Job) => process.send?.(await run(job)))
// The server decides when to stop; a key press in its terminal reaches this process too.
process.on('SIGINT', () => {})
process.on('disconnect', () => process.exit())
