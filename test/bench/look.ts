import { existsSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { z } from 'zod'
import { aimsOf, lineOf } from '../looks/aims.ts'
import { openSet } from '../looks/open-set.ts'
import { readOf } from '../looks/read-kept.ts'
import { type Read, score } from '../looks/score.ts'

const given = z.tuple([
  z.coerce.number().int().positive(),
  z.coerce.number().int().positive().default(1000),
])

/** How the photos of a seed, the first `most`, are seen: each aim with the figure that was reached. */
export async function benchLook(told: readonly string[]): Promise<void> {
  const [seed, most] = given.parse([told[0], told[1]])
  const folder = fileURLToPath(new URL(`../.out/looks/${seed}/`, import.meta.url))
  if (!existsSync(folder)) throw new Error(`Draw the photos first: npm run looks -- ${seed}`)
  const photos: Read[] = []
  for (const kept of openSet(folder).slice(0, most)) photos.push(await readOf(kept))
  process.stdout.write(`${photos.length} photos of seed ${seed}\n`)
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
