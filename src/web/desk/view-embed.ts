import type { Choice } from './view-what-if.ts'

export interface EmbedField {
  readonly name: 'accent' | 'ground' | 'font' | 'corner'
  readonly label: string
  readonly hint: string
  readonly value: string
  /** Why what was typed is not used; null: it is, or nothing was typed. */
  readonly error: string | null
}

/** How to put the intake on the shop's own site. */
export interface EmbedPage {
  readonly page: 'embed'
  readonly title: string
  readonly fields: readonly EmbedField[]
  readonly languages: readonly (Choice & { readonly picked: boolean })[]
  /** What is to be known of the colours before it is copied. */
  readonly advice: readonly string[]
  /** To be copied into a page. */
  readonly snippet: string
  /** Where the intake may stand, as the settings say it. */
  readonly allowed: { readonly sentence: string; readonly origins: readonly string[] }
  /** For a site with a content-security policy. */
  readonly directives: readonly string[]
  readonly preview: {
    readonly script: string
    readonly attributes: Readonly<Record<string, string>>
    readonly href: string
    readonly label: string
  }
}
