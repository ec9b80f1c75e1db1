import {
  type Choices,
  choicesOf,
  type Priced,
  pinned,
  type Quilt,
  type WidthCode,
  widths,
  wishFor,
} from './choices.ts'
import { type Line, linesOf, type Range } from './lines.ts'
import { postWeight } from './post-weight.ts'
import type { Rates } from './rates.ts'
import { supplyCounter } from './supply.ts'

export interface EstimateInput {
  readonly garments: readonly Priced[]
  /** Every quilt the pile may still become, the likely one first; at least one. */
  readonly quilts: readonly Quilt[]
  /** How many quilts of that kind and size share the pile. */
  readonly alike?: number
  readonly rates: Rates
}

/** Money is in minor units of `currency`. It is never a promise: a person confirms it. */
export interface Estimate {
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

export function totalOf(lines: readonly Line[]): Range {
  const sum = (part: keyof Range) => lines.reduce((total, line) => total + line[part], 0)
  return { low: sum('low'), likely: sum('likely'), high: sum('high') }
}

function packed(garments: readonly Priced[], rates: Rates) {
  const posted = garments.filter(({ grading }) => grading.grade !== 'home')
  const clothG = posted.reduce(
    (sum, { kind, size }) => sum + postWeight(kind, size, rates).grams,
    0,
  )
  const bySize = rates.boxes.toSorted((a, b) => a.holds_g - b.holds_g)
  const box = bySize.find(({ holds_g }) => holds_g >= clothG) ?? bySize.at(-1)!
  const count = Math.max(1, Math.ceil(clothG / box.holds_g))
  return { weightG: clothG + count * box.weighs_g, box: { box: box.box, count } }
}

/** An itemised estimate with a low, a likely and a high figure, and what the range hangs on. */
export function estimate({ garments, quilts, alike = 1, rates }: EstimateInput): Estimate {
  const classes = Object.keys(rates.interfacing)
  const all: Choices = {
    quilts: quilts.map(wishFor),
    alike,
    garments: garments.map((garment) => choicesOf(garment, classes)),
  }
  const supply = supplyCounter()
  const lines = linesOf(all, rates, supply)
  const total = totalOf(lines)
  const likely = pinned(all)
  const codes = Object.keys(widths) as WidthCode[]
  const width = codes
    .map((code) => {
      const { low, high } = totalOf(linesOf(widths[code](all, likely), rates, supply))
      return { code, low: low - total.likely, high: high - total.likely }
    })
    .filter(({ low, high }) => low !== 0 || high !== 0)
  return {
    lines,
    total,
    currency: rates.currency,
    width,
    depositMinor: Math.round((total.likely * rates.deposit_percent) / 100),
    validDays: rates.valid_days,
    turnaroundWeeks: rates.turnaround_weeks,
    ...packed(garments, rates),
  }
}
