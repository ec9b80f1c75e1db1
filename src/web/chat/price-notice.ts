import type { Act } from '../../flow/grammar.ts'
import { derivePile } from '../../intake/pile.ts'
import { type AsPlanned, asKnown } from '../../intake/planned.ts'
import type { Entry } from '../../intake/rows.ts'
import { toPlan } from '../../intake/to-plan.ts'
import { priceChangeWords } from '../../papers/price-change-words.ts'
import { settledOf } from '../../quilt/plan/settled.ts'
import { priceChange } from '../../quilt/price-change.ts'
import type { ChatContext } from './context.ts'
import type { Opened } from './opened.ts'
import { nameOf } from './present-garment.ts'
import { readerOf } from './present-pages.ts'

const settledIn = ({ best }: AsPlanned) => best && settledOf(best.pile, best.plan, best.proven)

const itemOf = (act: Act): number => ('item' in act ? act.item : 0)

/** What was changed, as it begins a sentence. */
function changeWords(act: Act, { open, key, language }: Opened): string {
  const garment = open.pile.garments.find(({ n }) => n === itemOf(act))
  const name = garment ? nameOf(garment, readerOf(open, key, language)) : ''
  const how = act.act === 'drop' ? 'without' : act.act === 'restore' ? 'with' : 'as_told'
  return language.say(`cost.change.${garment ? how : 'as_told_of_pile'}`, { garment: name })
}

/**
 * What the last act did to the likely price, where it came right after `since` and both sides have a price:
 * both from their plans, else both counted roughly. Null: nothing to tell.
 */
export function priceNotice(
  { knowledge, plans }: Pick<ChatContext, 'knowledge' | 'plans'>,
  opened: Opened,
  now: AsPlanned,
  since: unknown,
): string | null {
  const { row, flow, entries, pile, cloths } = opened.open
  const last: Entry | undefined = entries.at(-1)
  if (!last || String(last.seq - 1) !== since) return null
  const before = derivePile(knowledge, flow, row, entries.slice(0, -1))
  const then = settledIn(asKnown(toPlan({ pile: before, cloths }), plans))
  const settled = settledIn(now)
  const both = then !== null && settled !== null
  const was = before.priced(both ? then : null)
  const is = pile.priced(both ? settled : null)
  if (!was || !is) return null
  return priceChangeWords(priceChange(was, is), changeWords(last.act, opened), opened.language)
}
