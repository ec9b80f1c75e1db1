import { type RawBuilder, sql } from 'kysely'
import { canonical, sha256 } from '../base/ids.ts'
import { tablesIn, type Within } from '../store/contents.ts'
import type { Db } from '../store/schema.ts'
import { lastingTables, type TableFacts, type TableName, tables } from '../store/tables.ts'

/** A row as both stores hold it. */
export type PlainRow = Readonly<Record<string, string | number | null>>

/** How many rows there are and a sum over all that they hold, the same in whatever order they come. */
export interface Tally {
  readonly rows: number
  /** The SHA-256 of every row's line, added up modulo 2^256; hexadecimal. */
  readonly sum: string
}

export type Tallies = Readonly<Partial<Record<TableName, Tally>>>

/** Rows read at a time: few enough to be held, many enough that a page is worth its query. */
export const rowsAtOnce = 200

const modulus = 1n << 256n

/** Counts rows and sums them up. */
export class Counting {
  #rows = 0
  #sum = 0n

  add(lines: readonly string[]): void {
    for (const line of lines) this.#sum = (this.#sum + BigInt(`0x${sha256(line)}`)) % modulus
    this.#rows += lines.length
  }

  get tally(): Tally {
    return { rows: this.#rows, sum: this.#sum.toString(16).padStart(64, '0') }
  }
}

/** A row's line: JSON with its columns in the order of their names. */
export function lineOf(row: Readonly<Record<string, unknown>>): string {
  for (const [column, value] of Object.entries(row)) {
    if (value !== null && typeof value !== 'string' && typeof value !== 'number') {
      throw new TypeError(`a backup cannot hold ${typeof value}, as in column ${column}`)
    }
  }
  return canonical(row)
}

const factsOf = (table: TableName): TableFacts => tables[table]

/** All rows of a table in the order of its key, a page at a time. */
export async function* pagesOf(db: Db, table: TableName): AsyncGenerator<PlainRow[]> {
  const { key } = factsOf(table)
  const columns = sql.join(key.map((column) => sql.ref(column)))
  let after: RawBuilder<unknown> = sql``
  for (;;) {
    const { rows } = await sql<PlainRow>`
      select * from ${sql.table(table)} ${after} order by ${columns} limit ${sql.lit(rowsAtOnce)}
    `.execute(db)
    if (rows.length > 0) yield rows
    if (rows.length < rowsAtOnce) return
    const last = rows.at(-1)!
    after = sql`where (${columns}) > (${sql.join(key.map((column) => last[column]))})`
  }
}

export async function tallyOf(db: Db, table: TableName): Promise<Tally> {
  const counting = new Counting()
  for await (const page of pagesOf(db, table)) counting.add(page.map(lineOf))
  return counting.tally
}

/** The lasting tables that a store has: an older one lacks those that came later. */
export async function tablesThere(within: Within): Promise<TableName[]> {
  const found = await tablesIn(within)
  return lastingTables.filter((name) => found.has(name))
}

/** The first of those tables that holds a row; undefined: all are empty. */
export async function firstFilled(
  db: Db,
  names: readonly TableName[],
): Promise<TableName | undefined> {
  for (const name of names) {
    const { rows } = await sql`select 1 from ${sql.table(name)} limit 1`.execute(db)
    if (rows.length > 0) return name
  }
  return undefined
}

/** `onceMore`: rows that are there already stay as they are. */
export async function writeRows(
  db: Db,
  table: TableName,
  rows: readonly PlainRow[],
  { onceMore = false } = {},
): Promise<void> {
  if (rows.length === 0) return
  const insert = db.insertInto(table).values(rows as never)
  await (onceMore ? insert.onConflict((conflict) => conflict.doNothing()) : insert).execute()
}
