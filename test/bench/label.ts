import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { makeSafe } from '../../src/photo/safe.ts'
import { findLines } from '../../src/photo/words/find.ts'
import { loadModels, type Models } from '../../src/photo/words/models.ts'
import { decoded, readWords } from '../../src/photo/words/read.ts'
import { readLine } from '../../src/photo/words/recognise.ts'

const folder = fileURLToPath(new URL('../.out/labels/', import.meta.url))

/** The networks alone: lines found once and read once, as they lie. */
async function bare(jpeg: Uint8Array, models: Models): Promise<number> {
  const picture = await decoded(jpeg)
  const start = performance.now()
  for (const slab of await findLines(picture, models)) await readLine(picture, slab, models)
  return performance.now() - start
}

function photos(): string[] {
  if (!existsSync(folder)) throw new Error('There are no photos yet: run "npm run labels".')
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
  return files.filter((file) => file.endsWith('.jpg')).map((file) => folder + file)
}

const megabytes = (bytes: number): string => `${Math.round(bytes / 1e6)} MB`

/** How long labels take to read, side by side with the networks alone, and what memory it takes. */
export async function benchLabel(given: readonly string[]): Promise<void> {
  const [most = 100] = given.map(Number)
  const before = process.memoryUsage().rss
  const start = performance.now()
  const models = await loadModels()
  const loaded = performance.now() - start
  const took: number[] = []
  const memory: number[] = []
  let [whole, alone] = [0, 0]
  for (const file of photos().slice(0, most)) {
    const { full } = await makeSafe(readFileSync(file))
    const from = performance.now()
    await readWords(full, models)
    const ms = performance.now() - from
    took.push(ms)
    whole += ms
    alone += await bare(full, models)
    memory.push(process.memoryUsage().rss)
  }
  const sorted = took.toSorted((a, b) => a - b)
  const at = (share: number) =>
    `${(sorted[Math.floor(share * (sorted.length - 1))]! / 1000).toFixed(2)} s`
  const peak = process.resourceUsage().maxRSS * 1024
  process.stdout.write(
    `${took.length} photos: median ${at(0.5)}, p95 ${at(0.95)}, longest ${at(1)}\n` +
      `to the networks alone, on decoded pixels: ${(whole / alone).toFixed(2)}\n` +
      `start ${(loaded / 1000).toFixed(2)} s; memory ${megabytes(before)} before, ${megabytes(memory[0]!)} after the first, ${megabytes(memory.at(-1)!)} after the last, ${megabytes(peak)} at most\n`,
  )
}
