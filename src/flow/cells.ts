import type { Cell, Domain } from './table-grammar.ts'

export type FactValue = string | number

export const isList = (domain: Domain): domain is readonly string[] => Array.isArray(domain)

const names = (cell: string | string[]): readonly string[] =>
  typeof cell === 'string' ? [cell] : cell

/** Whether a value lies in a cell. A row without the cell takes every value. */
export function matches(cell: Cell | undefined, value: FactValue): boolean {
  if (cell === undefined) return true
  if (typeof cell === 'string' || Array.isArray(cell)) return names(cell).includes(String(value))
  if ('not' in cell) return !names(cell.not).includes(String(value))
  return (
    typeof value === 'number' && value >= (cell.from ?? -Infinity) && value <= (cell.to ?? Infinity)
  )
}

/** The values a cell names, in words or negated; none for a range. */
export function namedIn(cell: Cell): readonly string[] {
  if (typeof cell === 'string' || Array.isArray(cell)) return names(cell)
  return 'not' in cell ? names(cell.not) : []
}

/** Values of a domain that the same rows take. `from` is the first of them, `size` how many. */
export interface Band {
  readonly from: FactValue
  readonly size: number
}

/**
 * A domain in bands: each value of a list, or the stretches of whole numbers between the ends that the
 * cells name. Within a band no cell tells values apart.
 */
export function bandsOf(domain: Domain, cells: readonly Cell[]): Band[] {
  if (isList(domain)) return domain.map((from) => ({ from, size: 1 }))
  const starts = new Set([domain.from])
  for (const cell of cells) {
    if (typeof cell === 'string' || Array.isArray(cell) || 'not' in cell) continue
    if (cell.from !== undefined) starts.add(cell.from)
    if (cell.to !== undefined) starts.add(cell.to + 1)
  }
  const inside = [...starts]
    .filter((start) => start >= domain.from && start <= domain.to)
    .sort((a, b) => a - b)
  return inside.map((from, at) => ({ from, size: (inside[at + 1] ?? domain.to + 1) - from }))
}
