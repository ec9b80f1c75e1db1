/** A linear programme in whole numbers, to be made as small as can be: rows say lower ≤ Σ a·x ≤ upper. */
export interface Programme {
  readonly lower: readonly number[]
  readonly upper: readonly number[]
  readonly rows: readonly Row[]
}

export interface Row {
  readonly lower: number
  readonly upper: number
  readonly columns: readonly number[]
  readonly values: readonly number[]
}

/** Column and factor. */
export type Term = readonly [column: number, factor: number]

/** Gathers columns and rows; every column is a whole number. */
export class ProgrammeBuilder implements Programme {
  readonly lower: number[] = []
  readonly upper: number[] = []
  readonly rows: Row[] = []

  column(lower: number, upper: number): number {
    this.lower.push(lower)
    this.upper.push(upper)
    return this.lower.length - 1
  }

  row(lower: number, upper: number, terms: readonly Term[]): void {
    this.rows.push({
      lower,
      upper,
      columns: terms.map(([column]) => column),
      values: terms.map(([, factor]) => factor),
    })
  }

  atMost(upper: number, terms: readonly Term[]): void {
    this.row(Number.NEGATIVE_INFINITY, upper, terms)
  }

  atLeast(lower: number, terms: readonly Term[]): void {
    this.row(lower, Number.POSITIVE_INFINITY, terms)
  }
}
