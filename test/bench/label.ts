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

/** Memory is compared from here on: by then everything has been used once; so many readings at a time. */
const warm = 50
const longestMs = 60_000

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

/** What a process holds in memory now and has held at most, MB (Linux: proc(5), `VmRSS` and `VmHWM`). */
function memoryOf(pid: number | undefined): { readonly now: number; readonly most: number } {
  const status = readFileSync(`/proc/${pid}/status`, 'utf8')
  const of = (name: string) => Number(new RegExp(`^${name}:\\s+(\\d+) kB`, 'm').exec(status)![1])
  return { now: (of('VmRSS') * 1024) / 1e6, most: (of('VmHWM') * 1024) / 1e6 }
}

const megabytes = (size: number): string => `${Math.round(size)} MB`

const middle = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[values.length >> 1] ?? 0

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
  const sorted = took.toSorted((a, b) => a - b)
  const at = (share: number) =>
    `${(sorted[Math.floor(share * (sorted.length - 1))]! / 1000).toFixed(2)} s`
  const [early, late] = [memory.slice(warm, 2 * warm), memory.slice(-warm)].map(middle)
  const settled =
    memory.length < 3 * warm
      ? ''
      : `; in the middle of readings ${warm + 1} to ${2 * warm} ${megabytes(early!)}, of the last ${warm} ${megabytes(late!)} (${percent((late! / early! - 1) * 100)} more), ${percent((Math.max(...memory.slice(warm)) / memory[warm]! - 1) * 100)} more at most than after ${warm + 1}`
  process.stdout.write(
    `${took.length} readings: median ${at(0.5)}, p95 ${at(0.95)}, longest ${at(1)}\n` +
      `to the networks alone, on decoded pixels: ${(whole / alone).toFixed(2)}\n` +
      `start ${(loaded / 1000).toFixed(2)} s; memory of the reader ${megabytes(before)} before, ${megabytes(memory[0]!)} after the first, ${megabytes(memory.at(-1)!)} after the last${settled}; at most ${megabytes(memoryOf(worker.pid).most)}\n`,
  )
  await worker.end()
}
