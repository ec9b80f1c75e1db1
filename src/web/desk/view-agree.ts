/** What the desk shows of offers, money and the calendar: plain data in the reader's language. */
import type { OfferPaper } from '../../papers/offer-paper.ts'

interface Link {
  readonly label: string
  readonly href: string
}

/** On the page of a pile: whether it can be done in time, and what is agreed. */
export interface AgreeCard {
  readonly title: string
  readonly lines: readonly {
    readonly text: string
    readonly tone: 'plain' | 'yes' | 'tight' | 'no'
  }[]
  readonly changed: { readonly title: string; readonly sentences: readonly string[] } | null
  readonly links: readonly Link[]
}

export interface TypedAmendment {
  readonly label: string
  readonly amount: string
  readonly reason: string
}

export interface DeskOfferPage {
  readonly page: 'offer'
  readonly title: string
  readonly card: AgreeCard
  /** Null: the pile cannot be offered as things stand, and `closed` says why. */
  readonly form: {
    readonly postTo: string
    readonly hidden: Readonly<Record<string, string>>
    readonly currency: string
    readonly rows: readonly TypedAmendment[]
    readonly deposit: string
    readonly depositHint: string
    readonly validDays: string
    readonly promised: string
    readonly overReason: string
    readonly note: string
  } | null
  readonly closed: string | null
  readonly refusal: string | null
  /** As it would be sent, in each language; empty: it cannot be shown yet. */
  readonly preview: readonly {
    readonly name: string
    readonly lang: string
    readonly paper: OfferPaper
  }[]
  readonly canSend: boolean
  readonly back: Link
}

export interface DeskPayment {
  readonly receipt: string
  readonly what: string
  readonly amount: string
  readonly how: string
  readonly by: string
  /** Null: it is a counter-entry, or has one. */
  readonly counter: {
    readonly postTo: string
    readonly hidden: Readonly<Record<string, string>>
  } | null
}

export interface AgreementPage {
  readonly page: 'agreement'
  readonly title: string
  readonly card: AgreeCard
  readonly offers: readonly {
    readonly version: number
    readonly sentence: string
    readonly paper: OfferPaper
    readonly over: string | null
  }[]
  readonly sums: readonly { readonly label: string; readonly amount: string }[]
  readonly payments: readonly DeskPayment[]
  readonly form: {
    readonly postTo: string
    readonly hidden: Readonly<Record<string, string>>
    readonly currency: string
    readonly amount: string
    readonly how: string
    readonly kind: string
  }
  readonly refusal: string | null
  readonly steps: readonly {
    readonly step: string
    readonly label: string
    readonly reached: string | null
    /** To mark it or take the mark back; null: it follows from parcels or the sign-off. */
    readonly form: {
      readonly postTo: string
      readonly hidden: Readonly<Record<string, string>>
    } | null
  }[]
  readonly custody: Link
  readonly left: readonly string[]
  readonly back: Link
}

export interface CalendarPage {
  readonly page: 'calendar'
  readonly title: string
  readonly help: string
  readonly late: readonly string[]
  readonly weeks: readonly {
    readonly week: string
    readonly hours: string
    /** Of all there are, 0 to 100. */
    readonly percent: number
    readonly working: readonly Link[]
    readonly due: readonly Link[]
  }[]
}
