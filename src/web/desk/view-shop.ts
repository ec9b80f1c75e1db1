import type { EmbedField, EmbedPage } from './view-embed.ts'

/** A field of words: one line, or several. */
export interface ShopField {
  readonly name: string
  readonly label: string
  readonly hint: string | null
  readonly value: string
  /** Lines it is high; 1: a line of its own. */
  readonly lines: number
  readonly error: string | null
}

/** Name, contact, policies and look of the shop, to be changed and seen before they apply. */
export interface ShopPage {
  readonly page: 'shop'
  readonly title: string
  readonly postTo: string
  readonly csrf: string
  readonly error: string | null
  readonly words: readonly ShopField[]
  readonly look: readonly EmbedField[]
  /** What is to be known of the colours. */
  readonly advice: readonly string[]
  /** As customers will read it. */
  readonly shown: {
    readonly name: string
    readonly tagline: string
    readonly contact: string
    readonly address: readonly string[]
    readonly policies: readonly string[]
  }
  readonly preview: EmbedPage['preview']
}
