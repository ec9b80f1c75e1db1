/** What is kept of a customer, for how long, and the way to have it erased. */
export interface YoursPage {
  readonly page: 'yours'
  readonly kept: readonly { readonly what: string; readonly days: string }[]
  /** Photos that they sent and may take back, the newest last. */
  readonly photos: readonly YourPhoto[]
  readonly photoHidden: Readonly<Record<string, string>>
  /** All of it as a file. */
  readonly fileHref: string
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

export interface YourPhoto {
  readonly id: string
  readonly thumb: string
  readonly view: string
  readonly alt: string
  readonly eraseTo: string
}

/** The pile is gone. */
export interface ErasedPage {
  readonly page: 'erased'
  readonly backups: string
  readonly startHref: string
}
