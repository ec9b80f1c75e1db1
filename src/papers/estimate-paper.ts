import { formatMoney } from '../base/money.ts'
import type { Estimate } from '../quilt/estimate.ts'
import type { Layout, QuiltSize } from '../quilt/layout.ts'
import { type Line, type LineGroup, lineGroups, type Range, sum } from '../quilt/lines.ts'
import type { Language, Say } from '../words/words.ts'
import { weightWords } from './weight-words.ts'
import { workingWords } from './working-words.ts'

/** Lines that belong together, with their likely sum. */
export interface EstimateGroup {
  readonly label: string
  readonly amount: string
  readonly lines: readonly {
    readonly label: string
    readonly amount: string
    readonly note: string | null
  }[]
}

/** An estimate with its money and reasons written out. It is never a promise: the paper says so. */
export interface EstimatePaper {
  readonly low: string
  readonly likely: string
  readonly high: string
  /** Which quilt it is for, and whether every piece of it was counted. */
  readonly quilt: string
  readonly grounds: string
  readonly groups: readonly EstimateGroup[]
  /** How each line was counted, where there is more to say than its note. */
  readonly how: readonly { readonly label: string; readonly sentences: readonly string[] }[]
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

type Width = Pick<Range, 'low' | 'high'>

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

function groupOf(
  group: LineGroup,
  lines: readonly Line[],
  money: Money,
  say: Say,
): EstimateGroup | null {
  const codes: readonly string[] = lineGroups[group]
  const own = lines.filter(({ code, high }) => codes.includes(code) && high > 0)
  if (own.length === 0) return null
  return {
    label: say(`trade.estimate.groups.${group}`),
    amount: money(sum(own).likely),
    lines: own.map((line) => ({
      label: say(`trade.estimate.lines.${line.code}`),
      amount: money(line.likely),
      note: lineNote(line, money, say),
    })),
  }
}

const howOf = (lines: readonly Line[], language: Language): EstimatePaper['how'] =>
  lines
    .filter(({ workings, high }) => workings.length > 0 && high > 0)
    .map(({ code, workings }) => ({
      label: language.say(`trade.estimate.lines.${code}`),
      sentences: workings.map((working) => workingWords(working, language)),
    }))

/** The estimate as the customer reads it, for the quilt that was counted. */
export function estimatePaper(
  estimate: Estimate,
  { layout, size, quilts }: EstimateOf,
  language: Language,
): EstimatePaper {
  const { say, locale } = language
  const money: Money = (minor) => formatMoney({ minor, currency: estimate.currency }, locale)
  const { low, likely, high } = estimate.total
  return {
    low: money(low),
    likely: money(likely),
    high: money(high),
    quilt: say('cost.quilt', {
      count: quilts,
      size: say(`trade.quilts.${size}`),
      layout: say(`trade.layouts.${layout.id}.name`),
    }),
    grounds: say(`trade.estimate.grounds.${estimate.grounds}`),
    groups: (Object.keys(lineGroups) as LineGroup[]).flatMap(
      (group) => groupOf(group, estimate.lines, money, say) ?? [],
    ),
    how: howOf(estimate.lines, language),
    reasons: estimate.width
      .toSorted((a, b) => span(b) - span(a))
      .map((width) =>
        say(`trade.estimate.width.${width.code}`, { span: spanWords(width, money, say) }),
      ),
    terms: termsOf(estimate, money, language),
  }
}
