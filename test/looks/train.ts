import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { argv, stdout } from 'node:process'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { z } from 'zod'
import { fitnessNets, outlineNets, printNets } from '../../src/photo/look/nets.ts'
import type { OutlineNets } from '../../src/photo/look/outline.ts'
import { netsFile } from './nets-file.ts'
import { openSet } from './open-set.ts'
import { lessonOf, trainOutline } from './train-outline.ts'
import { morePrint, trainFitness, trainPrint } from './train-print.ts'
import { type Row, rowOf } from './train-rows.ts'

/**
 * train.ts [--outline|--add [--without=<nets>]|--add-fitness] <set> …: trains the nets of src/photo/look on the named
 * sets of test/.out/looks, all photos of each, and writes them there: those for print and fitness, and those for the
 * outline only where that is asked, for the others judge by it. With `--add` the nets that are there stay, but for the
 * oldest so many, and new ones for the class of print stand beside them; with `--add-fitness` new ones for faults. No
 * set on which the reading is measured may be among the sets. What is read of a set is kept beside it, `<set>.rows`,
 * and not read again: take that away where signs have changed.
 */

const home = fileURLToPath(new URL('../../test/.out/looks/', import.meta.url))
const to = fileURLToPath(new URL('../../src/photo/look/nets.ts', import.meta.url))
const tell = (line: string): void => void stdout.write(`${line}\n`)

const { positionals: sets, values } = parseArgs({
  args: argv.slice(2),
  allowPositionals: true,
  options: {
    outline: { type: 'boolean', default: false },
    add: { type: 'boolean', default: false },
    without: { type: 'string', default: '0' },
    'add-fitness': { type: 'boolean', default: false },
  },
})
if (sets.length === 0) throw new Error('Name the sets to learn from.')
const outline = values.outline
  ? await trainOutline(sets.flatMap((set) => openSet(`${home}${set}/`)))
  : outlineNets
const rows: Row[] = []
for (const set of sets) rows.push(...(await rowsOf(set, outline)))
tell(`${rows.length} photos`)
const made = {
  outline,
  print: values.add
    ? morePrint(rows, printNets, z.coerce.number().int().min(0).parse(values.without))
    : values['add-fitness']
      ? printNets
      : trainPrint(rows),
  fitness: values['add-fitness']
    ? [...fitnessNets, ...trainFitness(rows)]
    : values.add
      ? fitnessNets
      : trainFitness(rows),
}
writeFileSync(to, netsFile(made))
tell(`written to ${to}`)

async function rowsOf(set: string, nets: OutlineNets): Promise<Row[]> {
  const file = `${home}${set}.rows`
  if (existsSync(file) && !values.outline)
    return readFileSync(file, 'utf8')
      .split('\n')
      .filter(Boolean)
      .map((line) => JSON.parse(line) as Row)
  const read: Row[] = []
  for (const photo of openSet(`${home}${set}/`)) read.push(rowOf(await lessonOf(photo), nets))
  writeFileSync(file, read.map((row) => `${JSON.stringify(row)}\n`).join(''))
  return read
}
