import { type Choices, choicesOf, type Priced, pinned, type WidthCode, widths } from './choices.ts'
import { type Counted, type Line, type LineCode, type Range, sum } from './lines.ts'
import { depositMinorOf, usualDeposit } from './offer-sums.ts'
import { parcelsFor } from './parcels.ts'
import { plannedLines } from './planned-lines.ts'
import { garmentGrams } from './post-lines.ts'
import type { Rates } from './rates.ts'
import { roughLines } from './rough-lines.ts'
import type { Settled } from './settled.ts'
import { supplyCounter } from './supply.ts'
import { type Quilt, wishFor } from './wish.ts'

export interface EstimateInput {
  readonly garments: readonly Priced[]
  /** Every quilt the pile may still become, the likely one first; at least one. */
  readonly quilts: readonly Quilt[]
  /** How many quilts of that kind and size share the pile. */
  readonly alike?: number
  readonly rates: Rates
  /** What a plan of these garments for the likely quilts settles; null: there is none. */
  readonly settled?: Settled | null
}

/** Counted from what the garments are likely to give, from the best plan so far, or from the best there is. */
export const estimateGrounds = ['rough', 'plan-so-far', 'plan'] as const

/** Money is in minor units of `currency`. It is never a promise: a person confirms it. */
export interface Estimate {
  readonly grounds: (typeof estimateGrounds)[number]
  readonly lines: readonly Line[]
  readonly total: Range
  readonly currency: string
  /** What the range hangs on: how far the total may move from the likely one for this reason alone. */
  readonly width: readonly {
    readonly code: WidthCode
    readonly low: number
    readonly high: number
  }[]
  readonly depositMinor: number
  readonly validDays: number
  readonly turnaroundWeeks: { readonly low: number; readonly high: number }
  /** Garments and boxes together, grams. */
  readonly weightG: number
  readonly box: { readonly box: string; readonly count: number }
}

/** A line as the plan has it; what is still open moves it as far as it moved the rough one. */
function shifted(line: Line, planned: Counted | undefined): Line {
  if (!planned) return line
  const { likely } = planned
  return {
    ...line,
    ...planned,
    low: Math.max(0, likely + line.low - line.likely),
    high: likely + line.high - line.likely,
  }
}

/** Counts the lines over any choices, each time with the same plan. */
function lineCounter(rates: Rates, planned: ReadonlyMap<LineCode, Counted>) {
  const supply = supplyCounter()
  return (choices: Choices): Line[] =>
    roughLines(choices, rates, supply).map((line) => shifted(line, planned.get(line.code)))
}

/** The post on the way here is paid where it is posted. */
function depositOf(lines: readonly Line[], rates: Rates): number {
  const { likely } = sum(lines.filter(({ code }) => code !== 'post-there'))
  return depositMinorOf(usualDeposit(rates), likely)
}

/**
 * An itemised estimate with a low, a likely and a high figure, and what the range hangs on. With a plan
 * the likely figures are the plan's.
 */
export function estimate({
  garments,
  quilts,
  alike = 1,
  rates,
  settled = null,
}: EstimateInput): Estimate {
  const all: Choices = {
    quilts: quilts.map(wishFor),
    alike,
    garments: garments.map((garment) => choicesOf(garment, rates)),
  }
  const likely = pinned(all)
  const planned = settled ? plannedLines(likely, settled, rates) : new Map<LineCode, Counted>()
  const linesOf = lineCounter(rates, planned)
  const lines = linesOf(all)
  const total = sum(lines)
  const codes = Object.keys(widths) as WidthCode[]
  const width = codes
    .map((code) => {
      const { low, high } = sum(linesOf(widths[code](all, likely)))
      return { code, low: low - total.likely, high: high - total.likely }
    })
    .filter(({ low, high }) => low !== 0 || high !== 0)
  const { box, count, weightG } = parcelsFor(garmentGrams(likely).likely, rates)
  return {
    grounds: settled ? (settled.proven ? 'plan' : 'plan-so-far') : 'rough',
    lines,
    total,
    currency: rates.currency,
    width,
    depositMinor: depositOf(lines, rates),
    validDays: rates.valid_days,
    turnaroundWeeks: rates.turnaround_weeks,
    weightG,
    box: { box, count },
  }
}
