import { open, readFile, rename, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { z } from 'zod'
import { Failure } from '../base/failures.ts'
import { newId, sha256 } from '../base/ids.ts'
import type { Db, Row } from '../store/schema.ts'
import { lineOf, pagesOf } from './rows.ts'

/** That a pile or a photo was erased, by the hash of its id. */
export type Erasure = Row<'erasure'>

const erasure = z.strictObject({
  what_hash: z.string().regex(/^[0-9a-f]{64}$/),
  what: z.enum(['pile', 'photo']),
  by_whom: z.enum(['customer', 'staff', 'time']),
  at: z.number().int(),
})

/** Beside the records: whoever restores an older backup finds there what must not come back. */
export const ledgerFile = 'erasures.jsonl'

export const erasureOf = (
  what: Erasure['what'],
  id: string,
  by: Erasure['by_whom'],
  at: number,
): Erasure => ({ what_hash: sha256(id), what, by_whom: by, at })

/** Writes down what was erased; what stands there already stays. */
export async function noteErasures(db: Db, erasures: readonly Erasure[]): Promise<void> {
  for (const one of erasures) {
    await db
      .insertInto('erasure')
      .values(one)
      .onConflict((conflict) => conflict.column('what_hash').doNothing())
      .execute()
  }
}

/** Copies the ledger into its file, whole or not at all. */
export async function writeLedger(db: Db, dataDir: string): Promise<void> {
  const file = join(dataDir, ledgerFile)
  const draft = `${file}.${newId()}.part`
  const handle = await open(draft, 'wx', 0o600)
  try {
    for await (const page of pagesOf(db, 'erasure')) {
      await handle.writeFile(page.map((row) => `${lineOf(row)}\n`).join(''))
    }
    await handle.sync()
    await handle.close()
    await rename(draft, file)
  } catch (error) {
    await handle.close().catch(() => {})
    await rm(draft, { force: true })
    throw error
  }
}

/** What a ledger's file tells. Throws `file_unread`, or `ledger_damaged` {file, line}. */
export async function readLedger(file: string): Promise<Erasure[]> {
  const text = await readFile(file, 'utf8').catch((cause: unknown) => {
    throw new Failure('file_unread', { file }, { cause })
  })
  return text
    .split('\n')
    .map((line, i) => ({ line, nth: i + 1 }))
    .filter(({ line }) => line !== '')
    .map(({ line, nth }) => {
      try {
        return erasure.parse(JSON.parse(line))
      } catch (cause) {
        throw new Failure('ledger_damaged', { file, line: nth }, { cause })
      }
    })
}

/** Ids of piles and photos that a ledger tells of and that are there all the same. */
export async function erasedButThere(
  db: Db,
  ledger: readonly Erasure[],
): Promise<{ readonly piles: string[]; readonly photos: string[] }> {
  const hashes = new Set(ledger.map(({ what_hash }) => what_hash))
  const found = { piles: [] as string[], photos: [] as string[] }
  if (hashes.size === 0) return found
  for await (const page of pagesOf(db, 'pile')) {
    found.piles.push(...idsOf(page).filter((id) => hashes.has(sha256(id))))
  }
  for await (const page of pagesOf(db, 'photo')) {
    found.photos.push(...idsOf(page).filter((id) => hashes.has(sha256(id))))
  }
  return found
}

const idsOf = (rows: readonly Readonly<Record<string, unknown>>[]): string[] =>
  rows.map(({ id }) => String(id))
