import type { Pile } from '../../intake/pile.ts'
import type { AsPlanned } from '../../intake/planned.ts'
import { planWords } from '../../papers/plan-words.ts'
import { tallyWords, wantsWords } from '../../papers/tally-words.ts'
import { paths } from './paths.ts'
import { nameOf, type Reader, standing } from './present-garment.ts'
import type { Tally } from './view.ts'

const variedEnough = ({ wish: { layout, size, quilts } }: Pile, { asked }: AsPlanned): boolean =>
  asked.used.length >= layout.garments[size][0] * quilts

/** The garments give every piece that is asked of them, and are many enough for a lively quilt. */
function isEnough(pile: Pile, planned: AsPlanned): boolean {
  const { best } = planned
  if (!best) return pile.tally.enough && pile.tally.more.high === 0
  const byGarments = ({ role }: { role: number }) => best.pile.roles[role]!.garments
  return variedEnough(pile, planned) && !best.plan.buy.some(byGarments)
}

/** What the pile makes: from its plan where there is one, else counted roughly. */
function makesWords(pile: Pile, planned: AsPlanned, reader: Reader): string {
  const { language } = reader
  const { asked, best } = planned
  if (!best) return tallyWords(pile.tally, pile.wish, language.say)
  const { size, quilts } = pile.wish
  const nameOfId = (id: string | number) => nameOf(asked.used.find(({ n }) => n === id)!, reader)
  const words = planWords({ ...best, size, quilts, nameOf: nameOfId }, language)
  return variedEnough(pile, planned) ? words : `${wantsWords(pile.wish, language.say)} ${words}`
}

function adviceOf(pile: Pile, planned: AsPlanned, reader: Reader): string {
  const told = standing(pile).length
  const atHand =
    pile.atHand !== null && told > 0 && told < pile.atHand
      ? reader.language.say('count.at_hand', { told, atHand: pile.atHand })
      : ''
  return [makesWords(pile, planned, reader), atHand].filter(Boolean).join(' ')
}

const countedBy = {
  waiting: 'roughly',
  failed: 'roughly',
  working: 'for-now',
  proven: 'settled',
  open: 'settled',
  ended: 'settled',
  empty: 'settled',
} as const satisfies Record<AsPlanned['state'], Tally['counted']>

/** Garments by grade, and what they make so far. */
export function tallyOf(pile: Pile, planned: AsPlanned, reader: Reader): Tally {
  const byGrade = { sound: 0, care: 0, eyes: 0, home: 0 }
  for (const { grading } of standing(pile)) if (grading) byGrade[grading.grade] += 1
  return {
    garments: standing(pile).length,
    byGrade,
    advice: adviceOf(pile, planned, reader),
    enough: isEnough(pile, planned),
    counted: countedBy[planned.state],
    againHref: paths.pile(reader.key),
  }
}
