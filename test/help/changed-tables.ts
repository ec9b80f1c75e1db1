import { matches } from '../../src/flow/cells.ts'
import type { Table } from '../../src/flow/table-grammar.ts'
import { type Conditions, readStatements, type Statement } from '../../src/garment/must-hold.ts'
import { type Broken, broken } from '../../src/garment/prove.ts'
import type { TableSet } from '../../src/garment/space.ts'
import { decideFrom, knowledge, readYaml, tables } from './knowledge.ts'

export const statements: readonly Statement[] = readStatements(readYaml('tables/must-hold.yaml'))

export const rowsOf = (name: string): Table['rows'] =>
  tables.find(({ table }) => table === name)!.rows

/** The row of a table that reads a value of a fact, the topmost of several. */
export const rowReading = (table: string, fact: string, value: string): string =>
  rowsOf(table).find(({ when }) => when[fact] && matches(when[fact], value))!.id

/** What becomes of a row: other outputs, other cells; null takes it out. */
export type Change = readonly [
  table: string,
  row: string,
  to: { readonly give?: object; readonly when?: object } | null,
]

/** The tables with some rows changed. Throws where a row named is not there. */
export function changed(changes: readonly Change[]): readonly Table[] {
  for (const [table, row] of changes) {
    if (!rowsOf(table).some(({ id }) => id === row)) throw new Error(`${table} has no row ${row}`)
  }
  return tables.map((table) => {
    const mine = changes.filter(([name]) => name === table.table)
    const rows = table.rows.flatMap((row) => {
      const change = mine.find(([, id]) => id === row.id)
      if (!change) return [row]
      const [, , to] = change
      return to ? [{ ...row, ...to, give: { ...row.give, ...to.give } } as typeof row] : []
    })
    return { ...table, rows }
  })
}

export const setOf = (some: readonly Table[]): TableSet => ({
  tables: some,
  matches: matches as TableSet['matches'],
})

/** The knowledge of the shop with its tables changed. */
export const knowing = (some: readonly Table[]) => ({ ...knowledge, decide: decideFrom(some) })

/** Which of some statements fail over changed tables. */
export function brokenBy(changes: readonly Change[], some: readonly Statement[]): Broken[] {
  const tablesNow = changed(changes)
  return broken(some, setOf(tablesNow), knowing(tablesNow))
}

/** Whether facts are those that a premise speaks of. */
export const isSo = (conditions: Conditions, facts: Record<string, unknown>): boolean =>
  Object.entries(conditions).every(([name, values]) => values.includes(String(facts[name])))
