import { matches } from './cells.ts'
import { type Finding, nowhere, type Where } from './finding.ts'
import { type Compiled, cellOf, compileTable } from './table.ts'
import type { Domains, Table } from './table-grammar.ts'

export interface Proof {
  readonly findings: readonly Finding[]
  /** Distinct combinations of the facts that the rows look at, and how many of them some row takes. */
  readonly combinations: number
  readonly covered: number
  /** For each row, how many combinations it decides (hit first) or takes (hit collect). */
  readonly taken: readonly number[]
}

/**
 * Looks at every combination of the facts a table reads, by splitting their space into boxes and never
 * by sampling. Of a table with hit `first` no combination may be left over and each row must decide one;
 * of a table with hit `collect` each row must take one. The table has to pass checkTable.
 */
export function proveTable(table: Table, domains: Domains, where: Where = nowhere): Proof {
  const compiled = compileTable(table, domains)
  const space = new Space(compiled)
  const { left, decided } = space.divide()
  const taken = table.hit === 'first' ? decided : table.rows.map((_, at) => space.sizeOf(at))
  const findings: Finding[] = []
  if (table.hit === 'first' && space.gap) {
    findings.push({
      file: where.file,
      line: where.lineOf(['rows']),
      rule: 'gap',
      message: `${table.table}: no row matches ${left} of ${space.size} combinations`,
      example: words(space.gap) || 'whatever the facts',
    })
  }
  for (const [at, row] of table.rows.entries()) {
    if (taken[at]! > 0) continue
    findings.push({
      file: where.file,
      line: where.lineOf(['rows', at]),
      rule: 'row-unreachable',
      message: `${row.id} never decides anything`,
      example: `taken before: ${space.above(at).join(', ') || 'no value fits it'}`,
    })
  }
  return { findings, combinations: space.size, covered: space.size - left, taken }
}

/** Some columns with a value each. */
type Box = ReadonlyMap<number, string | number>

const words = (gap: ReadonlyMap<string, string | number>): string =>
  [...gap].map(([column, value]) => `${column}=${value}`).join(', ')

/** Of one box: how many combinations no row takes, and how many each row decides. */
interface Shares {
  readonly left: number
  readonly decided: readonly number[]
}

/** The space of a table's columns. Counts are exact up to 2^53. */
class Space {
  readonly size: number
  gap: ReadonlyMap<string, string | number> | null = null
  private readonly known = new Map<string, Shares>()
  private readonly compiled: Compiled
  private readonly sizes: readonly number[]

  constructor(compiled: Compiled) {
    this.compiled = compiled
    this.sizes = compiled.columns.map(({ bands }) => bands.reduce((sum, { size }) => sum + size, 0))
    this.size = this.sizes.reduce((product, size) => product * size, 1)
  }

  divide(): Shares {
    const { columns, table } = this.compiled
    return this.split(
      table.rows.map((_, at) => at),
      columns.map((_, at) => at),
      new Map(),
    )
  }

  /** How many combinations a row takes by itself. */
  sizeOf(row: number): number {
    return this.compiled.columns.reduce((product, { name, bands }) => {
      const cell = cellOf(this.compiled.table.rows[row]!, name)
      return (
        product * bands.reduce((sum, { from, size }) => (matches(cell, from) ? sum + size : sum), 0)
      )
    }, 1)
  }

  /** Earlier rows that meet a row somewhere. */
  above(row: number): string[] {
    const { columns, table } = this.compiled
    const meets = (other: number): boolean =>
      columns.every(({ name, bands }) =>
        bands.some(({ from }) =>
          [row, other].every((at) => matches(cellOf(table.rows[at]!, name), from)),
        ),
      )
    return table.rows.slice(0, row).flatMap(({ id }, at) => (meets(at) ? [id] : []))
  }

  /** `alive`: rows not yet ruled out in this box; `open`: columns not yet fixed in it. */
  private split(alive: readonly number[], open: readonly number[], box: Box): Shares {
    const rows = this.upToSure(alive, open)
    const told = open.filter((column) => rows.some((row) => this.cell(row, column) !== undefined))
    const rest = this.sizeIn(open.filter((column) => !told.includes(column)))
    const key = `${rows.join()}|${told.join()}`
    const shares = this.known.get(key) ?? this.divided(rows, told, box)
    this.known.set(key, shares)
    return { left: shares.left * rest, decided: shares.decided.map((share) => share * rest) }
  }

  private divided(rows: readonly number[], open: readonly number[], box: Box): Shares {
    const decided = this.compiled.table.rows.map(() => 0)
    const [top] = rows
    if (top === undefined) {
      this.note(box)
      return { left: 1, decided }
    }
    const column = open.find((at) => this.cell(top, at) !== undefined)
    if (column === undefined) {
      decided[top] = 1
      return { left: 0, decided }
    }
    let left = 0
    const others = open.filter((at) => at !== column)
    for (const { rows: alive, from, size } of this.bandsOf(column, rows)) {
      const shares = this.split(alive, others, new Map(box).set(column, from))
      left += shares.left * size
      for (const row of alive) decided[row]! += shares.decided[row]! * size
    }
    return { left, decided }
  }

  /** The living rows up to the first that asks nothing more: no row below it decides here. */
  private upToSure(alive: readonly number[], open: readonly number[]): readonly number[] {
    const sure = alive.findIndex((row) => open.every((at) => this.cell(row, at) === undefined))
    return sure < 0 ? alive : alive.slice(0, sure + 1)
  }

  private cell(row: number, column: number) {
    return cellOf(this.compiled.table.rows[row]!, this.compiled.columns[column]!.name)
  }

  private sizeIn(columns: readonly number[]): number {
    return columns.reduce((product, at) => product * this.sizes[at]!, 1)
  }

  /** The bands of a column, those put together that the same living rows take. */
  private bandsOf(column: number, alive: readonly number[]) {
    const merged = new Map<string, { rows: number[]; from: string | number; size: number }>()
    for (const { from, size } of this.compiled.columns[column]!.bands) {
      const rows = alive.filter((row) => matches(this.cell(row, column), from))
      const known = merged.get(rows.join())
      if (known) known.size += size
      else merged.set(rows.join(), { rows, from, size })
    }
    return merged.values()
  }

  /** Keeps the gap that the fewest facts describe. */
  private note(box: Box): void {
    let least = new Map(box)
    for (const column of box.keys()) {
      const fewer = new Map(least)
      fewer.delete(column)
      if (this.isGap(fewer)) least = fewer
    }
    if (this.gap && this.gap.size <= least.size) return
    this.gap = new Map([...least].map(([at, value]) => [this.compiled.columns[at]!.name, value]))
  }

  /** Whether no row matches in the box, whatever the other facts are. */
  private isGap(box: Box): boolean {
    return this.compiled.table.rows.every((_, row) =>
      [...box].some(([column, value]) => !matches(this.cell(row, column), value)),
    )
  }
}
