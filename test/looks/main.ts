import { readFileSync, rmSync } from 'node:fs'
import { basename, join } from 'node:path'
import { argv } from 'node:process'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { z } from 'zod'
import { contactSheet } from '../help/contact-sheet.ts'
import { aimsOf, lineOf } from './aims.ts'
import { openArt } from './art.ts'
import { drawSet } from './draw-set.ts'
import { faults } from './look.ts'
import { openSet } from './open-set.ts'
import type { Reading } from './reading.ts'
import { score } from './score.ts'

/**
 * main.ts [<seed>] [<photos>] [--fault=<fault>] [--long=<px>] [--faint]: photos of invented garments, each with what it
 * shows in a JSON and a mask beside it, into test/.out/looks/<seed>/. With a fault all have it, with `any` one
 * each, in turn; `long` is their longer side; with
 * `faint` what is printed can only just be told from its cloth.
 * main.ts score <seed> <file> [tune|held]: how what the command `look` printed for photos of that set, a
 * line each, holds against what they show.
 */

const home = fileURLToPath(new URL('../../test/.out/looks/', import.meta.url))
const tell = (line: string): void => void process.stdout.write(`${line}\n`)
const seedOf = z.coerce.number().int().positive()

if (argv[2] === 'score') hold(argv.slice(3))
else await draw(argv.slice(2))

async function draw(args: readonly string[]): Promise<void> {
  const { positionals, values } = parseArgs({
    args: [...args],
    allowPositionals: true,
    options: { fault: { type: 'string' }, long: { type: 'string' }, faint: { type: 'boolean' } },
  })
  const seed = seedOf.default(1).parse(positionals[0])
  const count = z.coerce.number().int().positive().default(400).parse(positionals[1])
  const fault = z
    .enum([...faults, 'any'])
    .optional()
    .parse(values.fault)
  const long = z.coerce.number().int().min(256).optional().parse(values.long)
  const folder = join(home, String(seed))
  rmSync(folder, { recursive: true, force: true })
  const truths = await drawSet(folder, seed, count, openArt(), {
    drawn: (done) => {
      if (done % 20 === 0) tell(`  ${done} of ${count}`)
    },
    told: (n) => ({
      ...(long && { long }),
      ...(values.faint && { faint: true }),
      ...(fault && { fault: fault === 'any' ? faults[n % faults.length]! : fault }),
    }),
  })
  const files = truths.map(({ file }) => join(folder, file))
  tell(`${files.length} photos in ${folder}`)
  tell(await contactSheet(files, join(home, `sheet-${seed}.png`)))
}

function hold(told: readonly string[]): void {
  const [seed, file, split] = z
    .tuple([seedOf, z.string(), z.enum(['tune', 'held']).optional()])
    .parse([told[0], told[1], told[2]])
  const lines = readFileSync(file, 'utf8').split('\n').filter(Boolean)
  const readings = new Map(
    lines.map((line) => {
      const reading = JSON.parse(line) as Reading & { readonly file: string }
      return [basename(reading.file), reading]
    }),
  )
  const read = openSet(join(home, String(seed)), split).map(({ truth }) => {
    const reading = readings.get(truth.file)
    if (!reading) throw new Error(`There is no reading of ${truth.file}.`)
    return { truth, reading }
  })
  const result = score(read)
  for (const aim of aimsOf(result)) tell(lineOf(aim))
  for (const { file, print, as, confidence } of result.misread)
    tell(`  ${file}: ${print} read as ${as ?? 'nothing'}, ${confidence}`)
  for (const file of result.sheet.wrong) tell(`  ${file}: measured by what is not the sheet`)
}
