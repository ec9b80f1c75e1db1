import type { Link, Photo } from './view.ts'
import type { Tab } from './view-frame.ts'
import type { Pager } from './view-queue.ts'

/** A form to write to the customer, with what was typed when it was refused. */
export interface StaffWriteForm {
  readonly id: string
  readonly postTo: string
  readonly hidden: Readonly<Record<string, string>>
  readonly text: string
  readonly wantsAnswer: boolean
  readonly error: string | null
  /** How the customer gets it: by mail too, or on their page alone. */
  readonly hint: string
}

export interface DeskEntry {
  readonly id: string
  readonly kind: 'message' | 'note'
  readonly by: string
  readonly at: string
  /** "About stretch": the question of the intake that was left to a person. */
  readonly about: string | null
  /** Empty: photos alone came. */
  readonly text: string
  readonly photos: readonly Photo[]
  readonly mine: boolean
  /** "Waits for us", "Answered, 3 Jun, 14:03". */
  readonly state: string | null
  readonly waits: boolean
  /** Where it is marked as seen to; null: it needs not. */
  readonly settleAt: string | null
}

export interface DeskThread {
  readonly id: string
  readonly title: string
  /** The customer waits for the shop. */
  readonly waits: boolean
  readonly entries: readonly DeskEntry[]
  readonly form: StaffWriteForm
}

/** What was written of one pile, those threads first that wait for the shop. */
export interface PileMessagesPage {
  readonly page: 'messages'
  readonly title: string
  readonly csrf: string
  readonly back: Link | null
  readonly threads: readonly DeskThread[]
  readonly form: StaffWriteForm
  /** What may be written about: the pile, and each garment. */
  readonly about: readonly {
    readonly value: string
    readonly label: string
    readonly chosen: boolean
  }[]
}

/** Customers' messages of all piles that wait for the shop. */
export interface WrittenPage {
  readonly page: 'written'
  readonly title: string
  readonly entries: readonly {
    readonly href: string
    readonly title: string
    readonly text: string
    readonly at: string
  }[]
}

export interface MailLine {
  readonly id: string
  readonly state: string
  readonly stateWords: string
  readonly subject: string
  /** "To Ana Ruiz, ana@ruiz.example". */
  readonly to: string
  readonly pile: Link
  /** When it was written, tried, sent. */
  readonly facts: readonly string[]
  readonly body: {
    readonly before: readonly string[]
    readonly quote: string | null
    readonly more: readonly { readonly lead: string; readonly quote: string }[]
    readonly after: readonly string[]
  }
  /** Where it is tried again, where its link is taken back; null: not now. */
  readonly againAt: string | null
  readonly revokeAt: string | null
}

export interface MailsPage {
  readonly page: 'mails'
  readonly title: string
  readonly csrf: string
  readonly filters: readonly Tab[]
  readonly mails: readonly MailLine[]
  readonly pager: Pager | null
}
