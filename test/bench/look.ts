import { existsSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { z } from 'zod'
import { focalIn } from '../../src/photo/look/focal.ts'
import { see } from '../../src/photo/look/look.ts'
import type { Look } from '../../src/photo/look/looked.ts'
import { makeSafe } from '../../src/photo/safe.ts'
import type { Done, Job } from '../../src/photo/work.ts'
import { startWorker } from '../../src/photo/worker-process.ts'
import { aimsOf, lineOf } from '../looks/aims.ts'
import { type Kept, openSet } from '../looks/open-set.ts'
import { type Read, score } from '../looks/score.ts'
import type { Truth } from '../looks/truth.ts'
import { growthOf, megabytes, memoryOf, timesOf } from './readings.ts'

const longestMs = 60_000

const given = z.tuple([
  z.coerce.number().int().positive(),
  z.coerce.number().int().positive().default(1000),
  z.coerce.number().int().min(0).default(1),
])

function photosOf(seed: number, most: number): Kept[] {
  const folder = fileURLToPath(new URL(`../.out/looks/${seed}/`, import.meta.url))
  if (!existsSync(folder)) throw new Error(`Draw the photos first: npm run looks -- ${seed}`)
  return openSet(folder).slice(0, most)
}

/** Reads a photo as it is kept; white is garment, as in the drawn mask. */
async function readOf(kept: Kept): Promise<Read> {
  const file = readFileSync(kept.path)
  const { full } = await makeSafe(file)
  const { look, mask } = await see(full, { focal35: await focalIn(file) })
  const { width, height, data } = mask
  const read = { width, height, data: data.map((one) => 255 * one) }
  const reading = { ...look, scale: scaleTold(look, kept.truth), mask: read }
  return { truth: kept.truth, reading, mask: await kept.mask() }
}

/** The scale in pixels of the photo as it was drawn: it is kept smaller where it is large. */
function scaleTold({ scale, width }: Look, truth: Truth): Look['scale'] {
  if (!scale) return null
  const by = truth.width / width
  const corners = scale.corners.map(([x, y]) => [x * by, y * by] as const)
  return { ...scale, mmPerPx: scale.mmPerPx / by, corners }
}

function tellScore(photos: readonly Read[]): void {
  const result = score(photos)
  for (const aim of aimsOf(result)) process.stdout.write(`${lineOf(aim)}\n`)
  const { byClass } = result.print
  const classes = Object.entries(byClass).map(([name, right]) => `${name} ${right?.toFixed(3)}`)
  process.stdout.write(`print class by class: ${classes.join(', ')}\n`)
  for (const { file, print, as, confidence } of result.misread)
    process.stdout.write(`  ${file}: ${print} read as ${as}, ${confidence}\n`)
  for (const file of result.sheet.wrong)
    process.stdout.write(`  ${file}: measured by what is not the sheet\n`)
}

/**
 * How photos of a seed are seen, and by the lane's own process how long that takes, side by side with making
 * them safe alone, and with what memory. `rounds`: how often they are gone through there.
 */
export async function benchLook(told: readonly string[]): Promise<void> {
  const [seed, most, rounds] = given.parse([told[0], told[1], told[2]])
  const photos = photosOf(seed, most)
  const reads: Read[] = []
  for (const photo of photos) reads.push(await readOf(photo))
  process.stdout.write(`${photos.length} photos of seed ${seed}\n`)
  tellScore(reads)
  if (rounds > 0) await timeLane(photos, rounds)
}

async function timeLane(photos: readonly Kept[], rounds: number): Promise<void> {
  const worker = startWorker<Job, Done>('worker')
  const looks: (Look | null)[] = []
  const took: number[] = []
  const memory: number[] = []
  let [looked, safe] = [0, 0]
  const ask = async (bytes: Uint8Array, looks: boolean) => {
    const from = performance.now()
    const done = await worker.ask({ bytes, looks }, longestMs)
    if (!done || !('photo' in done)) throw new Error('a photo was not made safe')
    return { ms: performance.now() - from, look: done.look }
  }
  for (let round = 0; round < rounds; round += 1)
    for (const { path } of photos) {
      const bytes = readFileSync(path)
      const { ms, look } = await ask(bytes, true)
      looks.push(look)
      took.push(ms)
      memory.push(memoryOf(worker.pid).now)
      if (round > 0) continue
      looked += ms
      safe += (await ask(bytes, false)).ms
    }
  const missing = looks.filter((look) => look === null).length
  process.stdout.write(
    `${took.length} photos made safe and looked at, ${missing} not looked at: ${timesOf(took)}\n` +
      `to making them safe alone: ${(looked / safe).toFixed(2)}\n` +
      `memory of the lane ${growthOf(memory)}; at most ${megabytes(memoryOf(worker.pid).most)}\n`,
  )
  await worker.end()
}
