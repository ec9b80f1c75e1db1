import type { Json } from './columns.ts'
import type { Who } from './schema.ts'

/** An offer beside its words in `agreed`, of the same version. Sums are kept; what becomes of it is set once. */
export interface OfferTable {
  pile_id: string
  version: number
  sums: Json
  currency: string
  total_minor: number
  deposit_minor: number
  /** Of work at the benches. */
  minutes: number
  /** The beginning of the day on which the quilt leaves the workshop at the latest. */
  promised_at: number
  expires_at: number
  /** Why a day was promised that the benches have no room for; empty: they have. */
  over_reason: string
  idem: string
  sent_at: number
  /** The account's id. */
  sent_by: string
  accepted_at: number | null
  /** As the customer typed it. */
  accepted_name: string | null
  /** SHA-256 of the kept words that were on the customer's page. */
  accepted_words: string | null
  /** The customer changed the pile after accepting; the promise stands until another offer is accepted. */
  superseded_at: number | null
  /** It holds no more. */
  ended_at: number | null
}

export const paymentKinds = ['deposit', 'balance', 'refund', 'counter'] as const
export type PaymentKind = (typeof paymentKinds)[number]

/** Money that came in or, below zero, went back. Never edited: a counter-entry undoes it. */
export interface PaymentTable {
  id: string
  pile_id: string
  /** Of the whole shop: 1, 2, 3 … */
  receipt: number
  kind: PaymentKind
  minor: number
  currency: string
  /** "Bank transfer", in the words of who took it. */
  how: string
  undoes: string | null
  idem: string
  /** The account's id. */
  who: string
  at: number
}

export const milestoneSteps = ['posted', 'arrived', 'done'] as const
export type MilestoneStep = (typeof milestoneSteps)[number]

/** Where the box and the quilt are, as far as the customer is told. Never edited: it is undone. */
export interface MilestoneTable {
  id: string
  pile_id: string
  step: MilestoneStep
  who: Who
  at: number
  undone_at: number | null
  undone_by: Who | null
}

export type LeavingKind = 'changed' | 'withdrawn' | 'asked'

/** A customer took the pile back: to change it, for good, or asked to once its box was on the way. */
export interface LeavingTable {
  id: string
  pile_id: string
  kind: LeavingKind
  reason: string
  idem: string
  at: number
}
