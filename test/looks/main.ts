import { rmSync } from 'node:fs'
import { join } from 'node:path'
import { argv } from 'node:process'
import { fileURLToPath } from 'node:url'
import { z } from 'zod'
import { contactSheet } from '../help/contact-sheet.ts'
import { openArt } from './art.ts'
import { drawSet } from './draw-set.ts'

/**
 * Photos of invented garments, each with what it shows in a JSON and a mask beside it, into
 * test/.out/looks/<seed>/: main.ts [<seed>] [<photos>]
 */

const [seed, count] = z
  .tuple([
    z.coerce.number().int().positive().default(1),
    z.coerce.number().int().positive().default(400),
  ])
  .parse([argv[2], argv[3]])

const folder = fileURLToPath(new URL(`../../test/.out/looks/${seed}/`, import.meta.url))
const tell = (line: string): void => void process.stdout.write(`${line}\n`)

rmSync(folder, { recursive: true, force: true })
const truths = await drawSet(folder, seed, count, openArt(), {
  drawn: (done) => {
    if (done % 20 === 0) tell(`  ${done} of ${count}`)
  },
})
const files = truths.map(({ file }) => join(folder, file))
tell(`${files.length} photos in ${folder}`)
tell(await contactSheet(files, join(folder, '..', `sheet-${seed}.png`)))
