import type { Link } from './view.ts'

export interface QueueEntry {
  readonly href: string
  /** "Pile 147". */
  readonly title: string
  /** "throw · Turned patchwork". */
  readonly quilt: string
  readonly who: string | null
  /** "10 garments · by 12 Mar". */
  readonly facts: string
  /** "2 need eyes", "1 question open", "on hold". */
  readonly marks: readonly {
    readonly kind: 'eyes' | 'note' | 'laid' | 'laid-ours' | 'verdict'
    readonly text: string
  }[]
  readonly current: boolean
}

/** A list in several pages: where one is, and the pages beside. */
export interface Pager {
  readonly at: string
  readonly before: string | null
  readonly after: string | null
}

/** What the list is narrowed to and how it is sorted; sent as it stands to see another. */
export interface QueueSearch {
  readonly list: string
  readonly text: string
  readonly only: readonly QueueChoice[]
  readonly order: readonly QueueChoice[]
  /** "12 of 140 piles"; null: it is not narrowed. */
  readonly found: string | null
  /** The whole list again; null: it is not narrowed. */
  readonly whole: Link | null
}

export interface QueueChoice {
  readonly value: string
  readonly label: string
  readonly chosen: boolean
}

export interface QueuePage {
  readonly page: 'queue'
  readonly title: string
  readonly entries: readonly QueueEntry[]
  readonly search: QueueSearch
  /** What to say where there are none. */
  readonly empty: string
  readonly openIntakes: string
  readonly pager: Pager | null
  /** Questions left to a person in intakes that are not confirmed yet. */
  readonly asked: readonly {
    readonly about: string
    readonly href: string
    readonly text: string
    readonly day: string
  }[]
  /** Piles that their customers took back. */
  readonly left: readonly Link[]
}
