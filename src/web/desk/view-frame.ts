import type { Link } from './view.ts'

export interface Tab extends Link {
  readonly current: boolean
}

/** What surrounds every page. */
export interface Frame {
  readonly shop: string
  readonly language: string
  readonly languages: readonly {
    readonly code: string
    readonly name: string
    readonly href: string
  }[]
  readonly style: string
  readonly script: string
  /** For the page on which a sheet is marked alone. */
  readonly sheetScript: string
  /** Who is signed in, and the secret of the form to sign out; null: nobody. */
  readonly visitor: { readonly name: string; readonly csrf: string } | null
  /** Where to go from anywhere. */
  readonly places: readonly Tab[]
  /** The rest of these, behind "More". */
  readonly more: readonly Tab[]
  /** The lists of piles. */
  readonly tabs: readonly Tab[]
}
