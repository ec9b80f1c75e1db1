import { percentOf } from '../base/money.ts'
import type { Estimate } from './estimate.ts'
import type { LineCode } from './lines.ts'

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

/** An offer's sums from the estimate's likely figures. `deposit`: a percentage of the total, or an amount. */
export function offerSums(
  { lines: estimated, currency }: Pick<Estimate, 'lines' | 'currency'>,
  {
    amendments,
    taxPercent,
    deposit,
  }: {
    readonly amendments: readonly Amendment[]
    readonly taxPercent: number | null
    readonly deposit: { readonly percent: number } | { readonly minor: number }
  },
): OfferSums {
  const lines = estimated.filter(isOurs).map(({ code, likely }) => ({ code, minor: likely }))
  const subtotalMinor = [...lines, ...amendments].reduce((sum, { minor }) => sum + minor, 0)
  const tax =
    taxPercent === null
      ? null
      : { percent: taxPercent, minor: percentOf(Math.max(0, subtotalMinor), taxPercent) }
  const totalMinor = subtotalMinor + (tax?.minor ?? 0)
  const depositMinor =
    'minor' in deposit ? deposit.minor : percentOf(Math.max(0, totalMinor), deposit.percent)
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
