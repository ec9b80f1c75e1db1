import { formatMoney } from '../base/money.ts'
import type { PriceChange } from '../quilt/price-change.ts'
import type { Language } from '../words/words.ts'

/**
 * A change of the price as a sentence, line by line and in all. `what` says what is changed, and begins the
 * sentence: "Without the blue flannel".
 */
export function priceChangeWords(
  { lines, totalMinor, currency }: PriceChange,
  what: string,
  { say, locale }: Language,
): string {
  if (lines.length === 0) return say('cost.change.none', { what })
  const amount = (minor: number) => formatMoney({ minor: Math.abs(minor), currency }, locale)
  const side = (minor: number) => (minor < 0 ? 'less' : 'more')
  const parts = lines
    .map(({ code, byMinor }) =>
      say(`cost.change.${side(byMinor)}_for`, {
        amount: amount(byMinor),
        line: say(`trade.estimate.for.${code}`),
      }),
    )
    .join(', ')
  if (totalMinor === 0) return say('cost.change.even', { what, parts })
  const total = say(`cost.change.${side(totalMinor)}`, { amount: amount(totalMinor) })
  return say('cost.change.lines', { what, parts, total })
}
