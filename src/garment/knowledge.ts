import type { Facts, Setting } from './facts.ts'
import type { Row } from './space.ts'

type Cell = string | number | boolean | null | readonly string[]

/** A row of a decision table that matched: what it asks and gives, and where its rule comes from. */
export interface Decision {
  readonly id: string
  readonly when: Row['when']
  readonly give: Readonly<Record<string, Cell>>
  readonly source: string
}

/** Asks a decision table by name. The caller makes this out of the owner's table files. */
export type Decide = (
  table: string,
  facts: Readonly<Record<string, string | number>>,
) => readonly Decision[]

/** A class of fusible interfacing. `soleC` is the sole-plate heat it needs, not the glue line's. */
export interface Interfacing {
  readonly class: string
  readonly method: 'fuse' | 'fuse-cool'
  readonly soleC: number
  readonly weights: readonly Facts['weight'][]
}

/** What a shop brings to the grading of a garment. */
export interface Knowledge {
  readonly decide: Decide
  readonly interfacings: readonly Interfacing[]
  readonly layouts: readonly { readonly id: string; readonly setting: Setting }[]
}
