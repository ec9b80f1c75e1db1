import { writeFileSync } from 'node:fs'
import { argv, stdout } from 'node:process'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { outlineNets } from '../../src/photo/look/nets.ts'
import { netsFile } from './nets-file.ts'
import { openSet } from './open-set.ts'
import { lessonOf, trainOutline } from './train-outline.ts'
import { trainFitness, trainPrint } from './train-print.ts'
import { type Row, rowOf } from './train-rows.ts'

/**
 * train.ts [--outline] <set> …: trains the nets of src/photo/look on the named sets of test/.out/looks, all
 * photos of each, and writes them there: those for print and fitness, and those for the outline only where that
 * is asked, for the others judge by it. No set on which the reading is measured may be among them.
 */

const home = fileURLToPath(new URL('../../test/.out/looks/', import.meta.url))
const to = fileURLToPath(new URL('../../src/photo/look/nets.ts', import.meta.url))
const tell = (line: string): void => void stdout.write(`${line}\n`)

const { positionals, values } = parseArgs({
  args: argv.slice(2),
  allowPositionals: true,
  options: { outline: { type: 'boolean', default: false } },
})
const photos = positionals.flatMap((set) => openSet(`${home}${set}/`))
if (photos.length === 0) throw new Error('Name the sets to learn from.')
tell(`${photos.length} photos`)
const outline = values.outline ? await trainOutline(photos) : outlineNets
const rows: Row[] = []
for (const photo of photos) rows.push(rowOf(await lessonOf(photo), outline))
writeFileSync(to, netsFile({ outline, print: trainPrint(rows), fitness: trainFitness(rows) }))
tell(`written to ${to}`)
