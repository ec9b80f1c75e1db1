import type { Link } from './view.ts'

/** The form to try a file otherwise. */
export interface TryPage {
  readonly page: 'try'
  readonly title: string
  readonly postTo: string
  readonly csrf: string
  readonly base: string
  /** What else the draft holds; null: nothing. */
  readonly besides: string | null
  readonly names: readonly string[]
  readonly name: string
  readonly text: string
  readonly error: string | null
  readonly back: Link
}

export interface ChangeShown {
  readonly title: string
  readonly href: string | null
  readonly lines: readonly string[]
  readonly garments: readonly {
    readonly name: string
    /** What of it changes, a sentence each. */
    readonly lines: readonly string[]
  }[]
}

export interface DraftPage {
  readonly page: 'draft'
  readonly title: string
  readonly by: string
  /** How it stands, in a sentence. */
  readonly state: string
  readonly again: Link | null
  readonly findings: readonly { readonly where: string; readonly message: string }[]
  readonly counts: readonly { readonly name: string; readonly count: number }[]
  readonly prices: string | null
  readonly changes: readonly ChangeShown[]
  readonly unlisted: string | null
  readonly agreed: string | null
  /** Its files to download, and where each belongs. */
  readonly files: readonly { readonly link: Link; readonly place: string }[]
  readonly also: Link
  readonly back: Link
}
