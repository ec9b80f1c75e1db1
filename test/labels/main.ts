import { rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { argv } from 'node:process'
import { fileURLToPath } from 'node:url'
import { z } from 'zod'
import { contactSheet } from '../help/contact-sheet.ts'
import type { Redrawn } from './draw.ts'
import { drawSet } from './draw-set.ts'
import { kinds } from './truth.ts'

/**
 * Photos of invented labels, each with what it shows in a JSON beside it, into test/.out/labels/<seed>/:
 * main.ts [<seed>] [<photos of kind main>] [<photos of each other kind>]
 */

const [seed, ofMain, ofOthers] = z
  .tuple([
    z.coerce.number().int().positive().default(1),
    z.coerce.number().int().nonnegative().default(240),
    z.coerce.number().int().nonnegative().default(20),
  ])
  .parse([argv[2], argv[3], argv[4]])

const folder = fileURLToPath(new URL(`../../test/.out/labels/${seed}/`, import.meta.url))
const tell = (line: string): void => void process.stdout.write(`${line}\n`)

rmSync(folder, { recursive: true, force: true })

const counts = Object.fromEntries(kinds.map((kind) => [kind, kind === 'main' ? ofMain : ofOthers]))
const { truths, redrawn } = await drawSet(folder, seed, counts, (count, of) => {
  if (count % 20 === 0) tell(`  ${count} of ${of}`)
})

writeFileSync(join(folder, '..', `redrawn-${seed}.json`), JSON.stringify(redrawn, null, 2))
const files = truths.map(({ file }) => join(folder, file))
const sheet = await contactSheet(files, join(folder, '..', `sheet-${seed}.png`))
tell(`${files.length} photos in ${folder}`)
tell(`${redrawn.length} labels drawn again, as their own words read otherwise: ${tallied(redrawn)}`)
tell(sheet)

function tallied(all: readonly Redrawn[]): string {
  const counts = new Map<string, number>()
  for (const { kind, misread, sure } of all) {
    const name = `${kind} ${misread}${sure ? ' and sure' : ''}`
    counts.set(name, (counts.get(name) ?? 0) + 1)
  }
  return [...counts].map(([name, count]) => `${name} ${count}`).join(', ') || 'none'
}
