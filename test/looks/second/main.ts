import { mkdirSync } from 'node:fs'
import { argv } from 'node:process'
import { fileURLToPath } from 'node:url'
import { z } from 'zod'
import { drawPhoto, keepPhoto } from './photo.ts'

/**
 * main.ts [<seed>] [<photos>]: garment photos of another making, flatter and plainer than those of test/looks,
 * so that what is trained does not know one maker's ways alone; each with its mask and its truth beside it,
 * into test/.out/looks/second-<seed>/.
 */

const natural = z.coerce.number().int().positive()
const seed = natural.default(1).parse(argv[2])
const count = natural.default(100).parse(argv[3])

const folder = fileURLToPath(new URL(`../../../test/.out/looks/second-${seed}/`, import.meta.url))
mkdirSync(folder, { recursive: true })
for (let number = 0; number < count; number++) keepPhoto(folder, await drawPhoto(seed, number))
