import { formatMoney } from '../base/money.ts'
import type { Estimate } from '../quilt/estimate.ts'
import type { Layout, QuiltSize } from '../quilt/layout.ts'
import type { Line } from '../quilt/lines.ts'
import type { Language, Say } from '../words/words.ts'
import { weightWords } from './weight-words.ts'

/** An estimate with its money and reasons written out. It is never a promise: the paper says so. */
export interface EstimatePaper {
  readonly low: string
  readonly likely: string
  readonly high: string
  readonly lines: readonly {
    readonly label: string
    readonly amount: string
    readonly note: string | null
  }[]
  /** What the range hangs on, a sentence each, the widest first. */
  readonly reasons: readonly string[]
  /** Deposit, how long it holds, how long it takes, postage: a line each. */
  readonly terms: readonly { readonly label: string; readonly text: string }[]
}

export interface EstimateOf {
  readonly layout: Layout
  readonly size: QuiltSize
  readonly quilts: number
}

type Money = (minor: number) => string

function lineNote(line: Line, money: Money, say: Say): string | null {
  const range =
    line.low === line.high
      ? null
      : say('estimate.range', { low: money(line.low), high: money(line.high) })
  if (line.quantity === 0) return range
  const count = say(`trade.estimate.units.${line.unit}`, { count: line.quantity })
  const each = line.unitPriceMinor === null ? count : `${count} × ${money(line.unitPriceMinor)}`
  return range ? `${each}. ${range}` : each
}

interface Width {
  readonly low: number
  readonly high: number
}

const span = ({ low, high }: Width): number => high - low

function spanWords({ low, high }: Width, money: Money, say: Say): string {
  const sides = low === 0 ? 'more' : high === 0 ? 'less' : 'both'
  return say(`cost.span.${sides}`, { less: money(-low), more: money(high) })
}

const termsOf = (
  estimate: Estimate,
  money: Money,
  { say, locale }: Language,
): EstimatePaper['terms'] => [
  { label: say('cost.terms.deposit'), text: money(estimate.depositMinor) },
  { label: say('cost.terms.valid'), text: say('cost.days', { count: estimate.validDays }) },
  {
    label: say('cost.terms.turnaround'),
    text: say('cost.weeks', estimate.turnaroundWeeks),
  },
  {
    label: say('cost.terms.post'),
    text: say('cost.parcel', {
      ...weightWords(estimate.weightG, locale),
      boxes: say(`trade.estimate.boxes.${estimate.box.box}`, { count: estimate.box.count }),
    }),
  },
]

/** The estimate as the customer reads it, for the quilt that was counted. */
export function estimatePaper(
  estimate: Estimate,
  { layout, size, quilts }: EstimateOf,
  language: Language,
): EstimatePaper {
  const { say, locale } = language
  const money: Money = (minor) => formatMoney({ minor, currency: estimate.currency }, locale)
  const { low, likely, high } = estimate.total
  const quilt = say('cost.quilt', {
    count: quilts,
    size: say(`trade.quilts.${size}`),
    layout: say(`trade.layouts.${layout.id}.name`),
  })
  return {
    low: money(low),
    likely: money(likely),
    high: money(high),
    lines: estimate.lines
      .filter((line) => line.high > 0)
      .map((line) => ({
        label: say(`trade.estimate.lines.${line.code}`),
        amount: money(line.likely),
        note: line.code === 'making' ? quilt : lineNote(line, money, say),
      })),
    reasons: estimate.width
      .toSorted((a, b) => span(b) - span(a))
      .map((width) =>
        say(`trade.estimate.width.${width.code}`, { span: spanWords(width, money, say) }),
      ),
    terms: termsOf(estimate, money, language),
  }
}
