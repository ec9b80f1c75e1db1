import { existsSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { z } from 'zod'
import { aimsOf, lineOf } from '../looks/aims.ts'
import { openSet } from '../looks/open-set.ts'
import { readOf } from '../looks/read-kept.ts'
import { type Read, score } from '../looks/score.ts'

const given = z.array(z.coerce.number().int().positive()).min(1)

/** How the photos of one seed or several together are seen: each aim with the figure that was reached. */
export async function benchLook(told: readonly string[]): Promise<void> {
  const seeds = given.parse(told)
  const photos: Read[] = []
  for (const seed of seeds) {
    const folder = fileURLToPath(new URL(`../.out/looks/${seed}/`, import.meta.url))
    if (!existsSync(folder)) throw new Error(`Draw the photos first: npm run looks -- ${seed}`)
    for (const kept of openSet(folder)) {
      const read = await readOf(kept)
      photos.push({ ...read, truth: { ...read.truth, file: `${seed}/${read.truth.file}` } })
    }
  }
  process.stdout.write(`${photos.length} photos of ${seeds.join(', ')}\n`)
  tellScore(photos)
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
