import { z } from 'zod'
import type { Entry } from './tar.ts'

// What a backup holds, in this order:
//   backup.json              what this is
//   tables/<table>/<n>.jsonl rows, a line of JSON each, its columns in the order of their names
//   photos/<name>.<size>.jpg pictures, the name being the SHA-256 of the largest
//   end.json                 what all of it came to
// and now and then, behind what they are about, sums/<n>.sha256 as `sha256sum` writes and checks them.

export const formatName = 'pieceworth backup'
export const formatVersion = 1

export const firstEntry = 'backup.json'
export const lastEntry = 'end.json'

/** Bytes of the largest entry that is read whole. Rows are cut up long before, and no picture comes near. */
export const largestEntry = 64 * 1024 * 1024

const nth = (n: number): string => String(n).padStart(6, '0')

export const rowsEntry = (table: string, n: number): string => `tables/${table}/${nth(n)}.jsonl`
export const sumsEntry = (n: number): string => `sums/${nth(n)}.sha256`
export const photoEntry = (file: string): string => `photos/${file}`

export const isSums = ({ name }: Entry): boolean => name.startsWith('sums/')

/** The table whose rows an entry holds; undefined: it holds none. */
export const tableOf = ({ name }: Entry): string | undefined =>
  /^tables\/(\w+)\/\d{6,}\.jsonl$/.exec(name)?.[1]

/** The name and size of the picture that an entry holds; undefined: it holds none. */
export function pictureOf({ name }: Entry): { name: string; size: string } | undefined {
  const [, photo, size] = /^photos\/([0-9a-f]{64})\.(\w+)\.jpg$/.exec(name) ?? []
  return photo && size ? { name: photo, size } : undefined
}

export const sumLine = (sum: string, name: string): string => `${sum}  ${name}\n`

export const beginning = z.object({
  format: z.literal(formatName),
  version: z.number().int(),
  made: z.iso.datetime(),
  store: z.enum(['sqlite', 'postgres']),
  migrations: z.array(z.string().regex(/^[\w-]{1,100}$/)).min(1),
})

export type Beginning = z.infer<typeof beginning>

const count = z.number().int().nonnegative()

export const ending = z.object({
  tables: z.record(z.string(), z.object({ rows: count, sum: z.string().regex(/^[0-9a-f]{64}$/) })),
  photos: z.object({
    /** Photos and, each in several sizes, their pictures. */
    photos: count,
    pictures: count,
    /** Photos whose files were not there. */
    missing: count,
  }),
})

export type Ending = z.infer<typeof ending>

const row = z.record(
  z.string().regex(/^[a-z]\w{0,62}$/),
  z.union([z.string(), z.number(), z.null()]),
)

/** The rows of an entry with their lines. Throws a SyntaxError or a ZodError where a line is none. */
export const rowsOf = (bytes: Buffer): { line: string; row: z.infer<typeof row> }[] =>
  bytes
    .toString('utf8')
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => ({ line, row: row.parse(JSON.parse(line)) }))
