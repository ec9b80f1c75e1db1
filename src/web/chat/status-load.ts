import { changedOf } from '../../desk/agreement.ts'
import { boxChecksOf, type CheckedRow } from '../../desk/box-results.ts'
import { type Decision, decisionsOf } from '../../desk/decisions.ts'
import { type LaidOut, laidOutOf } from '../../desk/laid-out.ts'
import type { AgreedDiff } from '../../intake/agreed-diff.ts'
import { type Milestones, milestonesOf } from '../../intake/milestones.ts'
import { type Offer, offersOf } from '../../intake/offers.ts'
import { paymentsOf } from '../../intake/payments.ts'
import type { OfferPaper } from '../../papers/offer-paper.ts'
import type { Db, PaymentRow, PileRow } from '../../store/schema.ts'

/** What the status of a confirmed pile is told from. */
export interface Standing {
  readonly row: PileRow
  /** Of the whole pile; undefined: none. */
  readonly verdict: Decision | undefined
  /** The newest first. */
  readonly offers: readonly Offer<OfferPaper>[]
  readonly payments: readonly PaymentRow[]
  readonly milestones: Milestones
  /** The newest result of everything that was looked for in its boxes. */
  readonly box: readonly CheckedRow[]
  /** Against the time before that it was confirmed; null: there was none, or nothing differs. */
  readonly changed: AgreedDiff | null
  readonly laidOut: LaidOut
}

export async function standingOf(db: Db, row: PileRow, now: number): Promise<Standing> {
  const decisions = await decisionsOf(db, row.id)
  return {
    row,
    verdict: decisions.findLast(({ item }) => item === null),
    offers: await offersOf<OfferPaper>(db, row.id, now),
    payments: await paymentsOf(db, row.id),
    milestones: await milestonesOf(db, row.id),
    box: [...(await boxChecksOf(db, row.id)).values()],
    changed: await changedOf(db, row.id),
    laidOut: await laidOutOf(db, row.id),
  }
}
