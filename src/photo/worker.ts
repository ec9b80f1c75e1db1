/** The process that `lane.ts` forks: takes one photo at a time and answers with it made safe. */
import sharp from 'sharp'
import { type Job, work } from './work.ts'

sharp.cache(false)
sharp.concurrency(1)
// Whatever a file claims to be, no other reader of the library is ever started on it.
sharp.block({ operation: ['VipsForeignLoad'] })
// A HEIC's header is read by the last of these, its picture by heic.ts.
sharp.unblock({
  operation: [
    'VipsForeignLoadJpegBuffer',
    'VipsForeignLoadPngBuffer',
    'VipsForeignLoadWebpBuffer',
    'VipsForeignLoadHeifBuffer',
  ],
})

process.on('message', async (job: Job) => process.send?.(await work(job)))
// The server decides when to stop; a key press in its terminal reaches this process too.
process.on('SIGINT', () => {})
process.on('disconnect', () => process.exit())
