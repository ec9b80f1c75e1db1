/** The process that `lane.ts` forks: takes one photo at a time and answers with it made safe. */
import sharp from 'sharp'
import { Failure, type FailureCode } from '../base/failures.ts'
import { makeSafe, type SafePhoto } from './safe.ts'

export interface Job {
  readonly bytes: Uint8Array
}

export type Done =
  | { readonly photo: SafePhoto }
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

async function run({ bytes }: Job): Promise<Done> {
  try {
    return { photo: await makeSafe(bytes) }
  } catch (error) {
    if (!(error instanceof Failure)) throw error
    return { code: error.code, details: error.details }
  }
}

process.on('message', async (job: Job) => process.send?.(await run(job)))
// The server decides when to stop; a key press in its terminal reaches this process too.
process.on('SIGINT', () => {})
process.on('disconnect', () => process.exit())
