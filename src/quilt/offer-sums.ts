import { percentOf } from '../base/money.ts'
import type { Estimate } from './estimate.ts'
import type { LineCode } from './lines.ts'
import type { Rates } from './rates.ts'

/** Something staff add to an offer, or take off where `minor` is below zero. */
export interface Amendment {
  readonly label: string
  readonly minor: number
  readonly reason: string
}

/** An offer in figures: minor units of `currency`, exact. */
export interface OfferSums {
  readonly currency: string
  readonly lines: readonly { readonly code: LineCode; readonly minor: number }[]
  readonly amendments: readonly Amendment[]
  readonly subtotalMinor: number
  /** Null: no tax is taken. */
  readonly tax: { readonly percent: number; readonly minor: number } | null
  readonly totalMinor: number
  readonly depositMinor: number
  readonly balanceMinor: number
}

/** What is paid to the workshop: the post on the way here is paid where it is posted. */
const isOurs = ({ code, likely }: Estimate['lines'][number]): boolean =>
  code !== 'post-there' && likely !== 0

/** A percentage of the total, an amount that staff wrote, or an amount that a smaller total caps. */
export type Deposit =
  | { readonly percent: number }
  | { readonly minor: number }
  | { readonly upTo: number }

/** What the shop asks for where nobody writes an amount. */
export const usualDeposit = ({
  deposit_amount,
  deposit_percent,
}: Pick<Rates, 'deposit_amount' | 'deposit_percent'>): Deposit =>
  deposit_amount === null ? { percent: deposit_percent } : { upTo: deposit_amount }

/** Minor units of a total. */
export function depositMinorOf(deposit: Deposit, totalMinor: number): number {
  if ('minor' in deposit) return deposit.minor
  const total = Math.max(0, totalMinor)
  return 'upTo' in deposit ? Math.min(deposit.upTo, total) : percentOf(total, deposit.percent)
}

/** An offer's sums from the estimate's likely figures. */
export function offerSums(
  { lines: estimated, currency }: Pick<Estimate, 'lines' | 'currency'>,
  {
    amendments,
    taxPercent,
    deposit,
  }: {
    readonly amendments: readonly Amendment[]
    readonly taxPercent: number | null
    readonly deposit: Deposit
  },
): OfferSums {
  const lines = estimated.filter(isOurs).map(({ code, likely }) => ({ code, minor: likely }))
  const subtotalMinor = [...lines, ...amendments].reduce((sum, { minor }) => sum + minor, 0)
  const tax =
    taxPercent === null
      ? null
      : { percent: taxPercent, minor: percentOf(Math.max(0, subtotalMinor), taxPercent) }
  const totalMinor = subtotalMinor + (tax?.minor ?? 0)
  const depositMinor = depositMinorOf(deposit, totalMinor)
  return {
    currency,
    lines,
    amendments,
    subtotalMinor,
    tax,
    totalMinor,
    depositMinor,
    balanceMinor: totalMinor - depositMinor,
  }
}
