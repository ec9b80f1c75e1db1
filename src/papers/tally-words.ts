import type { Layout, QuiltSize } from '../quilt/layout.ts'
import type { Tally } from '../quilt/tally.ts'
import type { Say } from '../words/words.ts'

/** A wider range than threefold tells nobody how much to look for: the least is said alone. */
const sayable = 3

interface Wished {
  readonly layout: Layout
  readonly size: QuiltSize
  readonly quilts: number
}

/** How many different garments make a lively quilt. */
export function wantsWords({ layout, size, quilts }: Wished, say: Say): string {
  const [least, most] = layout.garments[size]
  return say('count.wants', {
    size: say(`trade.quilts.${size}`),
    quilts,
    least: least * quilts,
    most: most * quilts,
  })
}

/** What the pile makes now and what it still wants, counted roughly, in a customer's words. */
export function tallyWords(tally: Tally, wish: Wished, say: Say): string {
  const size = say(`trade.quilts.${wish.size}`)
  const wants = wantsWords(wish, say)
  if (tally.enough) return say('count.enough', { size, quilts: wish.quilts })
  if (tally.suits === 0) return wants
  const { low, high } = tally.more
  return `${wants} ${moreWords(low, high, say)}`
}

/** How many more garments, about. */
export function moreWords(low: number, high: number, say: Say): string {
  if (low > 0 && high > low * sayable) return say('count.more_open', { low })
  if (low > 0 && low === high) return say('count.more_about', { count: low })
  return say('count.more', { low, high })
}
