import type { YourPhoto } from '../chat/view-yours.ts'
import type { Link } from './view.ts'

/** What is kept of a pile's customer, and the ways to let go of it. */
export interface KeptPage {
  readonly page: 'kept'
  readonly title: string
  readonly links: readonly Link[]
  readonly refused: string | null
  readonly photos: readonly YourPhoto[]
  readonly hidden: Readonly<Record<string, string>>
  readonly fileHref: string
  /** Null: not for this reader, or not now; `why` says so. */
  readonly erase: { readonly postTo: string; readonly minds: string | null } | null
  readonly why: string | null
}
