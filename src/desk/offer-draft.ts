import { days } from '../base/clock.ts'
import { Failure } from '../base/failures.ts'
import { readMoney } from '../base/money.ts'
import { lengthOf } from '../flow/sense.ts'
import { cleanText } from '../flow/text.ts'
import type { Amendment } from '../quilt/offer-sums.ts'
import { reasonLimits } from './decisions.ts'

/** An offer as its page sends it: everything as it was typed. */
export interface TypedOffer {
  /** Rows that are empty are passed over. */
  readonly amendments: readonly {
    readonly label: string
    readonly amount: string
    readonly reason: string
  }[]
  /** Empty: what the rates ask for. */
  readonly deposit: string
  readonly validDays: string
  /** "2026-07-01". */
  readonly promised: string
  readonly overReason: string
  readonly note: string
}

/** The same, read. Money in minor units, the day as its beginning, ms UTC. */
export interface OfferDraft {
  readonly amendments: readonly Amendment[]
  readonly depositMinor: number | null
  readonly validDays: number
  readonly promisedAt: number
  readonly overReason: string
  readonly note: string
}

/** Amendments; characters of what an amendment is; days that an offer may hold; days ahead. */
export const offerLimits = {
  amendments: 12,
  label: 120,
  validDays: { min: 1, max: 365 },
  daysAhead: 3 * 365,
} as const

function text(raw: string, longest: number): string {
  const clean = cleanText(raw)
  if (lengthOf(clean) > longest) throw new Failure('answer_too_long', { longest })
  return clean
}

function readAmendments(
  { amendments }: Pick<TypedOffer, 'amendments'>,
  currency: string,
): Amendment[] {
  const typed = amendments.filter((one) =>
    [one.label, one.amount, one.reason].some((part) => part.trim() !== ''),
  )
  const most = offerLimits.amendments
  if (typed.length > most) throw new Failure('too_many_amendments', { most })
  return typed.map((one) => {
    const label = text(one.label, offerLimits.label)
    const reason = text(one.reason, reasonLimits.longest)
    const minor = readMoney(one.amount, currency)
    const isWhole = label !== '' && lengthOf(reason) >= reasonLimits.shortest && minor !== 0
    if (!isWhole) throw new Failure('amendment_incomplete')
    return { label, minor, reason }
  })
}

function readDays(typed: string): number {
  const { min, max } = offerLimits.validDays
  const count = /^\d{1,4}$/.test(typed.trim()) ? Number(typed) : 0
  if (count < min || count > max) throw new Failure('number_out_of_range', { min, max })
  return count
}

function readDay(typed: string, now: number): number {
  const at = /^\d{4}-\d\d-\d\d$/.test(typed.trim()) ? Date.parse(typed.trim()) : Number.NaN
  const isAhead = at > now && at < now + days(offerLimits.daysAhead)
  if (!isAhead) throw new Failure('day_not_ahead')
  return at
}

/**
 * Throws `not_money`, `too_much_money`, `too_many_amendments`, `amendment_incomplete`, `answer_too_long`,
 * `number_out_of_range`, `day_not_ahead`.
 */
export function readOffer(typed: TypedOffer, currency: string, now: number): OfferDraft {
  return {
    amendments: readAmendments(typed, currency),
    depositMinor: typed.deposit.trim() === '' ? null : readMoney(typed.deposit, currency),
    validDays: readDays(typed.validDays),
    promisedAt: readDay(typed.promised, now),
    overReason: text(typed.overReason, reasonLimits.longest),
    note: text(typed.note, reasonLimits.longest),
  }
}
