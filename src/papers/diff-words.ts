import { formatMoney } from '../base/money.ts'
import type { LineCode } from '../quilt/lines.ts'
import type { Language } from '../words/words.ts'
import { dayIn } from './offer-paper.ts'

interface Named {
  readonly n: number
  readonly name: string | null
  readonly kind: string
}

interface Quilt {
  readonly layout: string
  readonly size: string
  readonly quilts: number
}

/** What two versions of a pile differ in. Money in minor units, days ms UTC. */
export interface Difference {
  readonly added: readonly Named[]
  readonly dropped: readonly Named[]
  readonly regraded: readonly {
    readonly garment: Named
    readonly from: string | null
    readonly to: string | null
  }[]
  readonly quilt: { readonly from: Quilt; readonly to: Quilt } | null
  readonly price: {
    readonly currency: string
    readonly lines: readonly { readonly code: LineCode; readonly byMinor: number }[]
    readonly totalMinor: number
  } | null
  readonly needBy: { readonly from: number | null; readonly to: number | null } | null
}

function priceWords(
  { currency, lines, totalMinor }: NonNullable<Difference['price']>,
  { say, locale }: Language,
): string[] {
  const by = (minor: number, line: string | null) => {
    const amount = formatMoney({ minor: Math.abs(minor), currency }, locale)
    const way = minor > 0 ? 'more' : 'less'
    return line === null
      ? say(`cost.change.${way}`, { amount })
      : say(`cost.change.${way}_for`, { amount, line })
  }
  if (lines.length === 0) return []
  const parts = lines.map(({ code, byMinor }) => by(byMinor, say(`trade.estimate.lines.${code}`)))
  return totalMinor === 0
    ? [say('changed.price_even', { parts: parts.join(', ') })]
    : [say('changed.price', { parts: parts.join(', '), total: by(totalMinor, null) })]
}

/** The difference in sentences, what a person looks for first standing first. */
export function differenceWords(diff: Difference, language: Language): string[] {
  const { say, has, locale } = language
  const name = ({ n, name: own, kind }: Named) => {
    const key = `intake.kind.options.${kind}`
    return own ?? (has(key) ? say(key) : say('tag.unnamed', { n }))
  }
  const grade = (one: string | null) => say(one ? `grades.${one}` : 'changed.no_grade')
  const quilt = ({ layout, size, quilts }: Quilt) => {
    const key = `trade.layouts.${layout}.name`
    return say('cost.quilt', {
      count: quilts,
      size: say(`trade.quilts.${size}`),
      layout: has(key) ? say(key) : layout,
    })
  }
  const day = (at: number | null) => (at === null ? say('changed.no_hurry') : dayIn(at, locale))
  return [
    ...diff.added.map((one) => say('changed.added', { n: one.n, name: name(one) })),
    ...diff.dropped.map((one) => say('changed.dropped', { n: one.n, name: name(one) })),
    ...diff.regraded.map(({ garment, from, to }) =>
      say('changed.regraded', {
        n: garment.n,
        name: name(garment),
        from: grade(from),
        to: grade(to),
      }),
    ),
    ...(diff.quilt
      ? [say('changed.quilt', { from: quilt(diff.quilt.from), to: quilt(diff.quilt.to) })]
      : []),
    ...(diff.needBy
      ? [say('changed.need_by', { from: day(diff.needBy.from), to: day(diff.needBy.to) })]
      : []),
    ...(diff.price ? priceWords(diff.price, language) : []),
  ]
}
