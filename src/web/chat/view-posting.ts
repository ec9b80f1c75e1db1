export interface Posting {
  readonly postTo: string
  readonly idem: string
  /** As they were typed where that was refused. */
  readonly carrier: string
  readonly tracking: string
  readonly refusal: string | null
  /** "Post AB 12: on its way". */
  readonly told: readonly string[]
}
