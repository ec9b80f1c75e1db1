import type { Link } from './view.ts'

/** What would save cloth or money on a plan. */
export interface ShownSavings {
  /** A sentence each, and whether it is proven. */
  readonly lines: readonly { readonly words: string; readonly sure: string }[]
  /** What there is to say beside them: that nothing saves, or that some is still being worked out. */
  readonly notes: readonly string[]
  readonly again: Link | null
}

/** Closed: only further plans tell, so it is asked for. */
export type SavingsPart =
  | { readonly state: 'closed'; readonly open: Link }
  | ({ readonly state: 'open'; readonly close: Link } & ShownSavings)
