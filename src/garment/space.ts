import { columns } from './facts.ts'
import type { Conditions } from './must-hold.ts'
import { departs, ordinary } from './ordinary.ts'

/** A cell of a decision table, as its grammar has it: a value, several, all but some, or a range. */
export type Cell =
  | string
  | readonly string[]
  | { readonly not: string | readonly string[] }
  | { readonly from?: number | undefined; readonly to?: number | undefined }

/** A decision table's rows, in order. */
export interface Rules {
  readonly table: string
  readonly rows: readonly {
    readonly id: string
    readonly when: Readonly<Record<string, Cell>>
    readonly give: Readonly<Record<string, unknown>>
  }[]
}

export type Row = Rules['rows'][number]
export type Value = string | number

/** One value of each column. */
export type Point = Readonly<Record<string, Value>>

/** The tables, and how a cell is matched: handed in, since this room knows no table engine. */
export interface TableSet {
  readonly tables: readonly Rules[]
  readonly matches: (cell: Cell | undefined, value: Value) => boolean
}

export const rowsIn = (tables: readonly Rules[], name: string): readonly Row[] =>
  tables.find(({ table }) => table === name)!.rows

export const rowsOf = ({ tables }: TableSet, name: string): readonly Row[] => rowsIn(tables, name)

/** Some columns, each with the values it may still have. Columns that are not in it are free. */
export type Box = ReadonlyMap<string, readonly Value[]>

/** Ends of the ranges in the cells: between them no cell tells numbers apart. */
function bandStarts(from: number, to: number, rows: readonly Row[], column: string): number[] {
  const ends = rows.flatMap(({ when }) => {
    const cell = when[column]
    if (typeof cell !== 'object' || !('from' in cell || 'to' in cell)) return []
    return [cell.from ?? from, (cell.to ?? to) + 1]
  })
  return [...new Set([from, ...ends])].filter((start) => start >= from && start <= to)
}

/** Every value of a column that some cell may tell apart. */
export function valuesOf(column: string, rows: readonly Row[]): readonly Value[] {
  const domain = columns()[column]!
  return 'from' in domain ? bandStarts(domain.from, domain.to, rows, column) : domain
}

export const boxOf = (conditions: Conditions): Box => new Map(Object.entries(conditions))

/** The part of a box where a row matches; null where there is none. */
export function within(
  box: Box,
  row: Row,
  rows: readonly Row[],
  { matches }: TableSet,
): Box | null {
  const narrowed = new Map(box)
  for (const [column, cell] of Object.entries(row.when)) {
    const left = (box.get(column) ?? valuesOf(column, rows)).filter((value) => matches(cell, value))
    if (left.length === 0) return null
    narrowed.set(column, left)
  }
  return narrowed
}

/** In how many facts a box leaves the ordinary garment. */
export const departuresOf = (box: Box): number =>
  [...box].filter(([column, values]) => departs(column, values)).length

/**
 * A part of the box where none of the rows matches; null where there is none. Exact: the box is split
 * along the cells of one row after another until each row surely matches or surely does not. Looks no
 * further than `most` departures from the ordinary garment.
 */
export function uncovered(
  box: Box,
  rows: readonly Row[],
  set: TableSet,
  most = Number.POSITIVE_INFINITY,
): Box | null {
  if (departuresOf(box) > most) return null
  const [row, ...others] = rows
  if (!row) return box
  let inside = box
  for (const [column, cell] of Object.entries(row.when)) {
    const values = inside.get(column) ?? valuesOf(column, rows)
    const outside = values.filter((value) => !set.matches(cell, value))
    if (outside.length > 0) {
      const found = uncovered(new Map(inside).set(column, outside), others, set, most)
      if (found) return found
    }
    const left = values.filter((value) => set.matches(cell, value))
    if (left.length === 0) return null
    inside = new Map(inside).set(column, left)
  }
  return null
}

/** The point of a box that lies nearest to the ordinary garment. */
export const pointIn = (box: Box): Point => ({
  ...ordinary,
  ...Object.fromEntries(
    [...box].map(([column, values]) => [
      column,
      departs(column, values) ? values[0]! : (ordinary[column] ?? values[0]!),
    ]),
  ),
})
