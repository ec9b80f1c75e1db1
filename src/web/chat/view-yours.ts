/** What is kept of a customer, for how long, and the way to have it erased. */
export interface YoursPage {
  readonly page: 'yours'
  readonly kept: readonly { readonly what: string; readonly days: string }[]
  /** Null: it cannot be erased now; `why` says what stands against it. */
  readonly erase: {
    readonly postTo: string
    readonly hidden: Readonly<Record<string, string>>
    readonly refusal: string | null
  } | null
  readonly why: string | null
  readonly askHref: string
  readonly backHref: string
}

/** The pile is gone. */
export interface ErasedPage {
  readonly page: 'erased'
  readonly backups: string
  readonly startHref: string
}
