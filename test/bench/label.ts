import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { makeSafe } from '../../src/photo/safe.ts'
import { findLines } from '../../src/photo/words/find.ts'
import { loadModels, type Models } from '../../src/photo/words/models.ts'
import { decoded, readWords } from '../../src/photo/words/read.ts'
import { readSteps } from '../../src/photo/words/recognise.ts'
import { readLines } from '../../src/textile/label-lines.ts'
import { labelSense } from '../../src/textile/label-sense.ts'
import type { LabelReading } from '../../src/textile/reading.ts'
import { score } from '../labels/score.ts'
import type { Truth } from '../labels/truth.ts'

/** Memory is compared from here on: by then everything has been used once. */
const warm = 50

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

const megabytes = (bytes: number): string => `${Math.round(bytes / 1e6)} MB`
const percent = (share: number | null): string => (share === null ? '–' : `${share.toFixed(1)} %`)

function tellScores(truths: readonly Truth[], readings: ReadonlyMap<string, LabelReading>): void {
  for (const one of score(truths, readings)) {
    process.stdout.write(
      `${one.kind}, ${one.photos} photos: composition exact ${percent(one.compositionExactPercent)}, sure and wrong ${percent(one.sureAndWrongPercent)}, sure among right ones ${percent(one.sureAmongRightPercent)}, ironing exact ${percent(one.ironExactPercent)}, read hotter ${one.readHotter}, ironing invented ${one.ironInvented}\n`,
    )
  }
}

/**
 * How photos of a seed are read and how long that takes, side by side with the networks alone, and what
 * memory it takes. `rounds`: how often they are gone through, for the memory.
 */
export async function benchLabel(given: readonly string[]): Promise<void> {
  const [seed = 1, most = 1000, rounds = 1] = given.map(Number)
  const before = process.memoryUsage().rss
  const start = performance.now()
  const models = await loadModels()
  const loaded = performance.now() - start
  const took: number[] = []
  const memory: number[] = []
  const truths: Truth[] = []
  const readings = new Map<string, LabelReading>()
  let [whole, alone] = [0, 0]
  const photos = photosOf(seed).slice(0, most)
  for (const [n, file] of Array.from({ length: rounds }, () => photos)
    .flat()
    .entries()) {
    const { full } = await makeSafe(readFileSync(file))
    const from = performance.now()
    const { lines, faults } = await readWords(full, models, labelSense)
    const ms = performance.now() - from
    took.push(ms)
    memory.push(process.memoryUsage().rss)
    if (n >= photos.length) continue
    whole += ms
    alone += await bare(full, models)
    const truth: Truth = JSON.parse(readFileSync(file.replace(/jpg$/, 'json'), 'utf8'))
    truths.push(truth)
    readings.set(truth.file, readLines(lines, { isClear: faults.length === 0 }))
  }
  tellScores(truths, readings)
  const sorted = took.toSorted((a, b) => a - b)
  const at = (share: number) =>
    `${(sorted[Math.floor(share * (sorted.length - 1))]! / 1000).toFixed(2)} s`
  const settled = memory.slice(warm)
  const growth =
    settled.length > 0
      ? `, ${percent((Math.max(...settled) / memory[warm]! - 1) * 100)} more at most after ${warm}`
      : ''
  process.stdout.write(
    `${took.length} readings: median ${at(0.5)}, p95 ${at(0.95)}, longest ${at(1)}\n` +
      `to the networks alone, on decoded pixels: ${(whole / alone).toFixed(2)}\n` +
      `start ${(loaded / 1000).toFixed(2)} s; memory ${megabytes(before)} before, ${megabytes(memory[0]!)} after the first, ${megabytes(memory.at(-1)!)} after the last${growth}; at most ${megabytes(process.resourceUsage().maxRSS * 1024)}\n`,
  )
}
