/** One of the processes that `look-cost.ts` compares: does what its argument says with each file it is sent. */
import { readFileSync } from 'node:fs'
import sharp from 'sharp'
import { lookAt, seeIn, smallOf } from '../../src/photo/look/look.ts'

sharp.cache(false)
sharp.concurrency(1)

const works = {
  /** What any product does that keeps a smaller copy of a photo. */
  bare: (bytes: Uint8Array) =>
    sharp(bytes).autoOrient().resize(1600, 1600, { fit: 'inside' }).jpeg().toBuffer(),
  unmeasured: async (bytes: Uint8Array) => seeIn(await smallOf(bytes)),
  look: lookAt,
} as const

const work = works[process.argv[2] as keyof typeof works]

process.on('message', async (file: string) => {
  const bytes = readFileSync(file)
  const from = performance.now()
  await work(bytes)
  process.send?.(performance.now() - from)
})
process.on('disconnect', () => process.exit())
