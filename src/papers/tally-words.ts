import type { Layout, QuiltSize } from '../quilt/layout.ts'
import type { Tally } from '../quilt/tally.ts'
import type { Say } from '../words/words.ts'

/** A wider range than threefold tells nobody how much to look for: the least is said alone. */
const sayable = 3

/** What the pile makes now and what it still wants, in a customer's words. */
export function tallyWords(
  tally: Tally,
  wish: { readonly layout: Layout; readonly size: QuiltSize; readonly quilts: number },
  say: Say,
): string {
  const [least, most] = wish.layout.garments[wish.size]
  const size = say(`trade.quilts.${wish.size}`)
  const wants = say('count.wants', {
    size,
    quilts: wish.quilts,
    least: least * wish.quilts,
    most: most * wish.quilts,
  })
  if (tally.enough) return say('count.enough', { size, quilts: wish.quilts })
  if (tally.suits === 0) return wants
  const { low, high } = tally.more
  return `${wants} ${moreWords(low, high, say)}`
}

function moreWords(low: number, high: number, say: Say): string {
  if (low > 0 && high > low * sayable) return say('count.more_open', { low })
  if (low > 0 && low === high) return say('count.more_about', { count: low })
  return say('count.more', { low, high })
}
