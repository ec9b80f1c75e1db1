import { Failure } from '../base/failures.ts'
import { type Band, bandsOf, type FactValue, isList, matches } from './cells.ts'
import type { Cell, Domain, Domains, Table, TableRow } from './table-grammar.ts'

/** What a decision is made from, by column. Other facts may be in it too. */
export type TableFacts = Readonly<Record<string, FactValue>>

/** Sets of rows as bits, 32 to a word. */
type Rows = Uint32Array

interface Column {
  readonly name: string
  readonly domain: Domain
  readonly bands: readonly Band[]
  /** For each band, the rows that take it. */
  readonly rows: readonly Rows[]
  readonly placeOf: ReadonlyMap<FactValue, number>
}

export interface Compiled {
  readonly table: Table
  readonly columns: readonly Column[]
}

/** Makes a table ready for decisions. Throws `flows_invalid` for a column that has no domain. */
export function compileTable(table: Table, domains: Domains): Compiled {
  const used = table.reads.filter((name) => table.rows.some((row) => Object.hasOwn(row.when, name)))
  return { table, columns: used.map((name) => columnOf(table, name, domains)) }
}

function columnOf(table: Table, name: string, domains: Domains): Column {
  if (!Object.hasOwn(domains, name)) {
    throw new Failure('flows_invalid', {
      file: `table ${table.table}`,
      line: 1,
      why: `there is no column ${name}`,
    })
  }
  const domain = domains[name]!
  const cells = table.rows.map((row) => cellOf(row, name))
  const bands = bandsOf(
    domain,
    cells.filter((cell) => cell !== undefined),
  )
  return {
    name,
    domain,
    bands,
    rows: bands.map(({ from }) => rowsWhere(cells, (cell) => matches(cell, from))),
    placeOf: new Map(bands.map(({ from }, at) => [from, at])),
  }
}

export const cellOf = (row: TableRow, name: string): Cell | undefined =>
  Object.hasOwn(row.when, name) ? row.when[name] : undefined

function rowsWhere<T>(all: readonly T[], holds: (one: T) => boolean): Rows {
  const rows = new Uint32Array(Math.ceil(all.length / 32))
  all.forEach((one, at) => {
    if (holds(one)) rows[at >> 5]! |= 1 << (at & 31)
  })
  return rows
}

/**
 * The rows that match, in order; of a table with hit `first` the topmost alone, or none. Throws
 * `bad_input` {table, column} where a fact that the table reads is missing or outside its domain.
 */
export function decide({ table, columns }: Compiled, facts: TableFacts): readonly TableRow[] {
  const sets = columns.map((column) => column.rows[bandAt(table, column, facts)]!)
  const found: TableRow[] = []
  for (let word = 0; word * 32 < table.rows.length; word += 1) {
    let bits = sets.reduce((all, set) => all & set[word]!, -1)
    while (bits !== 0) {
      const bit = 31 - Math.clz32(bits & -bits)
      const row = table.rows[word * 32 + bit]
      if (!row) break
      found.push(row)
      if (table.hit === 'first') return found
      bits &= bits - 1
    }
  }
  return found
}

function bandAt(table: Table, column: Column, facts: TableFacts): number {
  const value = Object.hasOwn(facts, column.name) ? facts[column.name]! : undefined
  const at = isList(column.domain)
    ? value !== undefined && column.placeOf.get(value)
    : bandOf(column.domain, column.bands, value)
  if (typeof at === 'number') return at
  throw new Failure('bad_input', { table: table.table, column: column.name })
}

function bandOf(
  domain: { readonly from: number; readonly to: number },
  bands: readonly Band[],
  value: FactValue | undefined,
): number | undefined {
  if (typeof value !== 'number' || !Number.isInteger(value)) return undefined
  if (value < domain.from || value > domain.to) return undefined
  return bands.findLastIndex(({ from }) => (from as number) <= value)
}
