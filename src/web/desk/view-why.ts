/** What stands behind a "Why?" of the desk, in the reader's language. */

/** Where a rule comes from. `words` are as the shop's files have them; null where the kind says it all. */
export interface WhySource {
  /** "Common practice, no source". */
  readonly kind: string
  readonly words: string | null
  /** The row or figure by its name: "tables/flags/thin". */
  readonly row: string
}

export interface WhyLine {
  /** The rule in words: "Where wear is thin or holes: with care." */
  readonly rule: string
  /** What was found there: "Wear: thin (customer)". */
  readonly found: readonly string[]
  readonly sources: readonly WhySource[]
}

/** Something that was reckoned, what it came to, and why. */
export interface WhyPart {
  readonly about: string
  readonly value: string
  readonly lines: readonly WhyLine[]
}
