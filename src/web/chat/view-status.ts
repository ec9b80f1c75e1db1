/** What a customer's page tells of a confirmed pile: plain data in the reader's language. */
import type { OfferPaper } from '../../papers/offer-paper.ts'

interface Link {
  readonly label: string
  readonly href: string
}

export interface StatusStep {
  readonly id: string
  readonly label: string
  readonly state: 'done' | 'now' | 'ahead'
  /** The day it was reached; null: it was not, or nobody noted it. */
  readonly day: string | null
}

/** The one thing that asks for attention, or that nothing does. */
export interface StatusNext {
  readonly title: string
  readonly text: string
  readonly link: Link | null
  /** True where the customer is asked for something. */
  readonly asks: boolean
}

/** What the box held, beside its list, a sentence each. */
export interface StatusBox {
  readonly title: string
  readonly lines: readonly string[]
}

/** What changed since the pile was confirmed before, a sentence each. */
export interface StatusChanged {
  readonly title: string
  readonly sentences: readonly string[]
}

export interface StatusMoney {
  readonly rows: readonly { readonly label: string; readonly amount: string }[]
  readonly receipts: readonly Link[]
}

/** Looked at, to be packed, on its way, in the workshop, home again; or taken back. */
export type StatusStage = 'looking' | 'packing' | 'posted' | 'with-us' | 'done' | 'withdrawn'

export interface StatusShown {
  readonly stage: StatusStage
  readonly steps: readonly StatusStep[]
  readonly next: StatusNext
  /** The day it is needed, and the day it is promised for. */
  readonly days: readonly { readonly label: string; readonly text: string }[]
  readonly changed: StatusChanged | null
  /** Null before a box was checked. */
  readonly box: StatusBox | null
  /** Null before anything is agreed. */
  readonly money: StatusMoney | null
  /** Offers, the newest first. */
  readonly offers: readonly Link[]
  /** Ways to change or withdraw the pile; null: it is withdrawn. */
  readonly leave: { readonly text: string; readonly links: readonly Link[] } | null
}

/** The customer's yes to an offer, as a form. */
export interface AcceptForm {
  readonly postTo: string
  readonly hidden: Readonly<Record<string, string>>
  readonly name: string
  readonly ticked: boolean
  readonly refusals: {
    readonly name: string | null
    readonly tick: string | null
    readonly other: string | null
  }
}

export interface OfferPage {
  readonly page: 'offer'
  readonly paper: OfferPaper
  /** What has become of it: "You accepted it on …". */
  readonly standing: { readonly state: string; readonly sentence: string }
  /** Null: it cannot be accepted, or not any more. */
  readonly accept: AcceptForm | null
  readonly ways: readonly Link[]
}

export interface ReceiptPage {
  readonly page: 'receipt'
  readonly shop: readonly string[]
  readonly title: string
  readonly rows: readonly { readonly label: string; readonly text: string }[]
  /** What it mends, or that it was mended; null: neither. */
  readonly note: string | null
  readonly backHref: string
}

export interface LeavePage {
  readonly page: 'leave'
  readonly kind: 'change' | 'withdraw'
  /** What will happen, a sentence each. */
  readonly lines: readonly string[]
  readonly postTo: string
  readonly hidden: Readonly<Record<string, string>>
  /** Null: no reason is asked. */
  readonly reason: string | null
  readonly refusal: string | null
  readonly backHref: string
}
