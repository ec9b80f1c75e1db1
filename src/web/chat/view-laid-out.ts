/** The customer's own words on the laid-out quilt, as a form; with what was typed when they were refused. */
export interface ChangeForm {
  readonly text: string
  readonly longest: number
  readonly error: string | null
  /** It stands behind a line that opens it: nothing is asked any more. */
  readonly folded: boolean
}

/** The laid-out quilt as its customer looks at it: plain data in their language. */
export interface LaidOutPage {
  readonly page: 'laid-out'
  readonly state: 'asked' | 'yes' | 'change' | 'anew'
  /** How it stands, in a sentence. */
  readonly standing: string
  /** What the workshop wrote with the photos; empty: nothing. */
  readonly note: string
  readonly photos: readonly {
    readonly id: string
    readonly view: string
    readonly alt: string
  }[]
  /** What the customer wished to be changed; null: nothing. */
  readonly wish: string | null
  readonly postTo: string
  readonly hidden: Readonly<Record<string, string>>
  /** The button that says yes; null: there is nothing to say yes to. */
  readonly yes: string | null
  /** Null: it is too late to change anything, or it is being laid out anew. */
  readonly change: ChangeForm | null
  /** Why what was sent was not kept; null: it was, or the form of the change says so. */
  readonly refused: string | null
  readonly ways: readonly { readonly label: string; readonly href: string }[]
}
