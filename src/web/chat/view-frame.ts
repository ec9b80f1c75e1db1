import type { Link } from './view.ts'

export interface Shop {
  readonly name: string
  readonly tagline: string | null
  readonly email: string | null
  readonly phone: string | null
}

export interface LanguageLink {
  readonly code: string
  /** In its own language: "Español". */
  readonly name: string
  readonly href: string
}

/** What surrounds every page. */
export interface Frame {
  readonly shop: Shop
  readonly language: string
  /** Every language of the shop, the current one too. */
  readonly languages: readonly LanguageLink[]
  /** Paths of the hashed files, from the manifest. */
  readonly style: string
  /** The shop's own colours and letters over it; null: none. */
  readonly look: string | null
  readonly script: string
  /** For pages that stand in a frame on another site. */
  readonly framedScript: string
  /** For the question that asks for marks alone. */
  readonly spotScript: string
  /** For the page on which a sheet is marked alone. */
  readonly sheetScript: string
  /** Where the shop's name leads; null: nowhere. */
  readonly homeHref: string | null
  /** Page that shows the link to come back; null where there is nothing to keep. */
  readonly saveHref: string | null
  /** Something to be told first, for example that another device has answered meanwhile. */
  readonly notice: string | null
  /** That the shop waits for an answer, and where to give it. */
  readonly asked?: Link | null
}
