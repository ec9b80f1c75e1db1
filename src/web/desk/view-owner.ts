import type { DraftPage, TryPage } from './view-draft.ts'
import type { EmbedPage } from './view-embed.ts'
import type { FilePage, FilesPage } from './view-files.ts'
import type { NumbersPage } from './view-numbers.ts'
import type { PeoplePage } from './view-people.ts'
import type { ShopPage } from './view-shop.ts'

/** What the owner alone sees. */
export type OwnerPage =
  | PeoplePage
  | FilesPage
  | FilePage
  | TryPage
  | DraftPage
  | NumbersPage
  | EmbedPage
  | ShopPage
