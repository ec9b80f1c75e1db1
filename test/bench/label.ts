import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { openLabelReader } from '../../src/photo/label-lane.ts'
import { isClear } from '../../src/photo/label-words.ts'
import type { LabelDone, LabelJob } from '../../src/photo/label-worker.ts'
import { makeSafe } from '../../src/photo/safe.ts'
import { findLines } from '../../src/photo/words/find.ts'
import { loadModels, type Models } from '../../src/photo/words/models.ts'
import { decoded } from '../../src/photo/words/read.ts'
import { readSteps } from '../../src/photo/words/recognise.ts'
import { startWorker, type Worker } from '../../src/photo/worker-process.ts'
import { readLines } from '../../src/textile/label-lines.ts'
import type { LabelReading } from '../../src/textile/reading.ts'
import { type Score, score } from '../labels/score.ts'
import type { Truth } from '../labels/truth.ts'
import { growthOf, megabytes, memoryOf, timesOf } from './readings.ts'

/** Longer than a server waits: a machine that does other work as well fails no reading here. */
const longestMs = 600_000

/** Photos read between two lines of how far a run has come. */
const sayEvery = 50

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
    tellDoubts(one)
  }
}

function tellDoubts({ wrong, unsure }: Score): void {
  const of = (what: string, files: readonly string[]) => {
    if (files.length > 0) process.stdout.write(`  ${what}: ${files.length}: ${files.join(', ')}\n`)
  }
  const nameOf = ({ file }: { readonly file: string }) => file.replace(/\.jpg$/, '')
  of('composition wrong', wrong.filter(({ blocks }) => blocks).map(nameOf))
  of('ironing wrong', wrong.filter(({ iron }) => iron).map(nameOf))
  const codes = new Set(unsure.flatMap(({ why }) => why))
  for (const code of codes)
    of(`right, not sure, ${code}`, unsure.filter(({ why }) => why.includes(code)).map(nameOf))
}

/** What the server's reader does, and what each of its processes held when it had answered, MB. */
function watchedReader() {
  const held: ReturnType<typeof memoryOf>[] = []
  let processes = 0
  const start = (): Worker<LabelJob, LabelDone> => {
    const worker = startWorker<LabelJob, LabelDone>('label-worker')
    processes += 1
    return {
      ...worker,
      async ask(job) {
        const done = await worker.ask(job, longestMs)
        if (done) held.push(memoryOf(worker.pid))
        return done
      },
    }
  }
  const reader = openLabelReader({ start, loadAfterMs: 0 })
  return { reader, held, processes: () => processes }
}

/**
 * How photos of a seed are read by the server's reader, how long that takes, side by side with the networks alone
 * in this process, and what memory it takes. `rounds`: how often they are gone through, for the memory.
 */
export async function benchLabel(given: readonly string[]): Promise<void> {
  const [seed = 1, most = 1000, rounds = 1] = given.map(Number)
  const photos = photosOf(seed).slice(0, most)
  const models = await loadModels()
  const start = performance.now()
  const { reader, held, processes } = watchedReader()
  while (reader.state() === 'starting') await new Promise((done) => setTimeout(done, 5))
  const loaded = performance.now() - start
  const before = held.splice(0)[0]!.now
  const took: number[] = []
  const truths: Truth[] = []
  const readings = new Map<string, LabelReading>()
  let [whole, alone] = [0, 0]
  for (const [n, file] of Array.from({ length: rounds }, () => photos)
    .flat()
    .entries()) {
    const { full } = await makeSafe(readFileSync(file))
    const from = performance.now()
    const words = await reader.read(full)
    const ms = performance.now() - from
    took.push(ms)
    // A long run says where it is, and what it would say if it ended here.
    if (took.length % sayEvery === 0)
      process.stderr.write(`${took.length} read; memory ${growthOf(held.map(({ now }) => now))}\n`)
    if (n >= photos.length) continue
    whole += ms
    alone += await bare(full, models)
    const truth: Truth = JSON.parse(readFileSync(file.replace(/jpg$/, 'json'), 'utf8'))
    truths.push(truth)
    readings.set(truth.file, readLines(words.lines, { isClear: isClear(words) }))
  }
  tellScores(truths, readings)
  process.stdout.write(
    `${took.length} readings: ${timesOf(took)}\n` +
      `to the networks alone, on decoded pixels: ${(whole / alone).toFixed(2)}\n` +
      `start ${(loaded / 1000).toFixed(2)} s; memory of the reader ${megabytes(before)} before, ${growthOf(held.map(({ now }) => now))}; at most ${megabytes(Math.max(...held.map(({ most }) => most)))}; ${processes()} processes\n`,
  )
  await reader.close()
}
