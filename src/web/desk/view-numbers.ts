/** A number with what it counts beside it. */
export interface Counted {
  readonly name: string
  readonly value: string
  readonly note: string | null
}

export interface NumbersPage {
  readonly page: 'numbers'
  readonly title: string
  readonly from: string
  readonly to: string
  readonly error: string | null
  /** What all of it is counted over. */
  readonly over: readonly string[]
  readonly empty: string | null
  readonly groups: readonly {
    readonly title: string
    readonly what: string
    readonly rows: readonly Counted[]
  }[]
  readonly exports: readonly {
    readonly href: string
    readonly label: string
    readonly what: string
  }[]
}
