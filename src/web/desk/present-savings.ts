import { formatMoney } from '../../base/money.ts'
import { type PricedSaving, pricedSavings } from '../../desk/savings.ts'
import type { Reviewed } from '../../desk/what-if.ts'
import { yardWords } from '../../papers/shortage-words.ts'
import type { Planned } from '../../planning/plan-pile.ts'
import type { Plans } from '../../planning/plans.ts'
import type { Change } from '../../planning/what-if.ts'
import type { Language } from '../../words/words.ts'
import { type Names, namesOf } from './present-way.ts'
import type { ShownSavings } from './view-savings.ts'

/** Plans are waited for so long. */
const patienceMs = 2500

function whatWords(change: Change, names: Names, { say }: Language): string {
  switch (change.change) {
    case 'rule':
      return say(`desk.savings.rule.${change.rule}`)
    case 'more':
      return say('desk.savings.more', { role: say(`trade.roles.${change.role}`) })
    case 'without':
      return say('desk.savings.without', { name: names(Number(change.garment)) })
  }
}

/** What it comes to: cloth, pieces, garments, price. */
function sumsOf({ change, saves, price }: PricedSaving, stepLength: number, language: Language) {
  const { say, locale } = language
  const side = (by: number) => (by > 0 ? 'less' : 'more')
  const yards = yardWords(Math.abs(saves.steps) * stepLength, locale)
  const isMust = change.change === 'rule' && change.rule === 'must'
  const amount =
    price && formatMoney({ minor: Math.abs(price.totalMinor), currency: price.currency }, locale)
  return [
    ...(saves.steps === 0 ? [] : [say(`desk.savings.cloth.${side(saves.steps)}`, { yards })]),
    ...(saves.pieces === 0
      ? []
      : [say(`desk.savings.pieces.${side(saves.pieces)}`, { count: Math.abs(saves.pieces) })]),
    ...(saves.garments > 0 && !isMust
      ? [say('desk.savings.garments', { count: saves.garments })]
      : []),
    ...(price && amount && price.totalMinor !== 0
      ? [say(`desk.savings.price.${side(-price.totalMinor)}`, { amount })]
      : []),
  ]
}

function lineOf(one: PricedSaving, stepLength: number, names: Names, language: Language) {
  const { say, locale } = language
  return {
    words: say('desk.savings.line', {
      what: whatWords(one.change, names, language),
      sums: new Intl.ListFormat(locale, { type: 'unit' }).format(sumsOf(one, stepLength, language)),
    }),
    sure: say(one.saves.proven ? 'desk.savings.proven' : 'desk.savings.unproven'),
  }
}

/** What would save cloth or money on a pile's plan. `href` leads to the page that shows it. */
export async function shownSavings(
  reviewed: Reviewed,
  planned: Planned,
  { plans, href }: { readonly plans: Plans; readonly href: string },
  language: Language,
): Promise<ShownSavings> {
  const { say } = language
  const { found, left } = await pricedSavings(reviewed, planned, plans, patienceMs)
  const names = namesOf(reviewed.pile.garments, language)
  return {
    lines: found.map((one) => lineOf(one, planned.pile.cloth.step, names, language)),
    notes: [
      ...(found.length === 0 && left === 0 ? [say('desk.savings.none')] : []),
      ...(left > 0 ? [say('desk.savings.left', { count: left })] : []),
    ],
    again: left > 0 ? { label: say('desk.plan.again'), href } : null,
  }
}
