import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { isClear } from '../../src/photo/label-words.ts'
import type { LabelDone, LabelJob } from '../../src/photo/label-worker.ts'
import { makeSafe } from '../../src/photo/safe.ts'
import { findLines } from '../../src/photo/words/find.ts'
import { loadModels, type Models } from '../../src/photo/words/models.ts'
import { decoded } from '../../src/photo/words/read.ts'
import { readSteps } from '../../src/photo/words/recognise.ts'
import { startWorker } from '../../src/photo/worker-process.ts'
import { readLines } from '../../src/textile/label-lines.ts'
import type { LabelReading } from '../../src/textile/reading.ts'
import { score } from '../labels/score.ts'
import type { Truth } from '../labels/truth.ts'
import { growthOf, megabytes, memoryOf, timesOf } from './readings.ts'

/** Longer than a server waits: a machine that does other work as well fails no reading here. */
const longestMs = 600_000

/** The networks alone: lines found once and read once, as they lie. */
async function bare(jpeg: Uint8Array, models: Models): Promise<number> {
  const picture = await decoded(jpeg)
  const start = performance.now()
  for (const slab of await findLines(picture, models)) await readSteps(picture, slab, models)
  return performance.now() - start
}

function photosOf(seed: number): string[] {
  const folder = fileURLToPath(new URL(`../.out/labels/${seed}/`, import.meta.url))
  if (!existsSync(folder)) throw new Error(`Draw the photos first: npm run labels -- ${seed}`)
  return readdirSync(folder)
    .filter((file) => file.endsWith('.jpg'))
    .map((file) => folder + file)
}

const percent = (share: number | null): string => (share === null ? '–' : `${share.toFixed(1)} %`)

function tellScores(truths: readonly Truth[], readings: ReadonlyMap<string, LabelReading>): void {
  for (const one of score(truths, readings)) {
    process.stdout.write(
      `${one.kind}, ${one.photos} photos: composition exact ${percent(one.compositionExactPercent)}, sure and wrong ${percent(one.sureAndWrongPercent)}, sure among right ones ${percent(one.sureAmongRightPercent)}, ironing exact ${percent(one.ironExactPercent)}, read hotter ${one.readHotter}, ironing invented ${one.ironInvented}\n`,
    )
  }
}

/**
 * How photos of a seed are read by the reader's own process, how long that takes, side by side with the networks
 * alone in this one, and what memory it takes. `rounds`: how often they are gone through, for the memory.
 */
export async function benchLabel(given: readonly string[]): Promise<void> {
  const [seed = 1, most = 1000, rounds = 1] = given.map(Number)
  const photos = photosOf(seed).slice(0, most)
  const models = await loadModels()
  const start = performance.now()
  const worker = startWorker<LabelJob, LabelDone>('label-worker')
  await worker.ask({ jpeg: null }, longestMs)
  const loaded = performance.now() - start
  const before = memoryOf(worker.pid).now
  const took: number[] = []
  const memory: number[] = []
  const truths: Truth[] = []
  const readings = new Map<string, LabelReading>()
  let [whole, alone] = [0, 0]
  for (const [n, file] of Array.from({ length: rounds }, () => photos)
    .flat()
    .entries()) {
    const { full } = await makeSafe(readFileSync(file))
    const from = performance.now()
    const done = await worker.ask({ jpeg: full }, longestMs)
    const ms = performance.now() - from
    if (!done || !('words' in done) || !done.words) throw new Error(`${file} was not read`)
    took.push(ms)
    memory.push(memoryOf(worker.pid).now)
    if (n >= photos.length) continue
    whole += ms
    alone += await bare(full, models)
    const truth: Truth = JSON.parse(readFileSync(file.replace(/jpg$/, 'json'), 'utf8'))
    truths.push(truth)
    readings.set(truth.file, readLines(done.words.lines, { isClear: isClear(done.words) }))
  }
  tellScores(truths, readings)
  process.stdout.write(
    `${took.length} readings: ${timesOf(took)}\n` +
      `to the networks alone, on decoded pixels: ${(whole / alone).toFixed(2)}\n` +
      `start ${(loaded / 1000).toFixed(2)} s; memory of the reader ${megabytes(before)} before, ${growthOf(memory)}; at most ${megabytes(memoryOf(worker.pid).most)}\n`,
  )
  await worker.end()
}
