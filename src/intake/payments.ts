import type { Db, PaymentRow } from '../store/schema.ts'
import type { Offer } from './offers.ts'

/** Of one pile, in the order of their receipts. */
export const paymentsOf = (db: Db, pileId: string): Promise<PaymentRow[]> =>
  db.selectFrom('payment').selectAll().where('pile_id', '=', pileId).orderBy('receipt').execute()

/** Minor units of one currency, exact. */
export interface Account {
  readonly currency: string
  /** Of the offer that stands; 0 without one. */
  readonly totalMinor: number
  readonly depositMinor: number
  /** Came in, less what went back. */
  readonly receivedMinor: number
  /** What is still to come before work begins, and in all; never below zero. */
  readonly depositDueMinor: number
  readonly dueMinor: number
  /** Received beyond what the offer asks for. */
  readonly overMinor: number
}

/** How much of an offer has been paid. `offer`: the one that stands, accepted or superseded. */
export function accountOf(
  offer: Pick<Offer, 'row'> | undefined,
  payments: readonly Pick<PaymentRow, 'minor'>[],
  currency: string,
): Account {
  const receivedMinor = payments.reduce((sum, { minor }) => sum + minor, 0)
  const totalMinor = offer?.row.total_minor ?? 0
  const depositMinor = offer?.row.deposit_minor ?? 0
  return {
    currency: offer?.row.currency ?? currency,
    totalMinor,
    depositMinor,
    receivedMinor,
    depositDueMinor: Math.max(0, depositMinor - receivedMinor),
    dueMinor: Math.max(0, totalMinor - receivedMinor),
    overMinor: Math.max(0, receivedMinor - totalMinor),
  }
}
