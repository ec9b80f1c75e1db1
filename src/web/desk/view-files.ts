import type { Link } from './view.ts'

export interface FileShown {
  readonly name: string
  readonly href: string
  readonly tryAt: string
  /** "version 1a2b3c, 4 kB". */
  readonly line: string
  /** "applies today"; null: nothing is to be said. */
  readonly mark: string | null
}

export interface FilesPage {
  readonly page: 'files'
  readonly title: string
  /** What the start proved, and since when the files apply. */
  readonly proof: readonly string[]
  /** Files that are otherwise on the disk; null: none. */
  readonly waiting: string | null
  readonly groups: readonly {
    readonly title: string
    readonly lines: readonly string[]
    readonly files: readonly FileShown[]
  }[]
  readonly tryNew: Link
  readonly drafts: readonly {
    readonly href: string
    readonly label: string
    readonly line: string
  }[]
}

export interface FilePage {
  readonly page: 'file'
  readonly title: string
  readonly line: string
  readonly text: string
  readonly tryIt: Link
  readonly back: Link
}
