import type { QuiltSize } from '../quilt/layout.ts'
import { calledOf, type Pile } from '../quilt/plan/instance.ts'
import { moreLike } from '../quilt/plan/more.ts'
import type { Plan } from '../quilt/plan/plan.ts'
import { shortageOf } from '../quilt/plan/shortage.ts'
import type { Language, Say } from '../words/words.ts'
import { yardWords } from './shortage-words.ts'
import { moreWords } from './tally-words.ts'

/** A plan and whose it is, as its customer reads of it. */
export interface PlanTold {
  readonly pile: Pile
  readonly plan: Plan
  readonly size: QuiltSize
  readonly quilts: number
  /** What the customer calls a garment, by its id in the pile. */
  readonly nameOf: (garment: Pile['garments'][number]['id']) => string
}

const sum = (counts: readonly number[]): number => counts.reduce((all, count) => all + count, 0)

/** Kinds of pieces that are short, where garments fill some other kind. */
function shortRoles({ roles, demand }: Pile, { buy }: Plan, { say, locale }: Language): string {
  const open = roles.map((_, role) =>
    sum(buy.filter((one) => one.role === role).map(({ count }) => count)),
  )
  const wanted = roles.map(({ garments }, role) =>
    garments ? sum(demand.map((row) => row[role]!)) : 0,
  )
  const some = roles.flatMap((one, role) =>
    wanted[role]! > 0 && open[role]! > 0 ? [calledOf(one)] : [],
  )
  const filled = roles.some((_, role) => wanted[role]! > 0 && open[role] === 0)
  if (!filled) return ''
  const names = [...new Set(some)].map((role) => say(`count.short.${role}`))
  return say('count.short_of', { roles: new Intl.ListFormat(locale).format(names) })
}

/** Cloth that fills what garments leave open, in yards. */
function clothWords({ pile, plan }: PlanTold, { say, locale }: Language): string {
  const length = sum(
    shortageOf(pile, plan)
      .roles.filter(({ byGarments }) => byGarments)
      .map((role) => role.length),
  )
  return length > 0 ? say('count.or_cloth', { yards: yardWords(length, locale) }) : ''
}

function openWords(told: PlanTold, language: Language): string[] {
  const more = moreLike(told.pile, told.plan)
  return [
    shortRoles(told.pile, told.plan, language),
    more ? moreWords(more.low, more.high, language.say) : '',
    clothWords(told, language),
  ]
}

const idleWords = ({ pile, plan, nameOf }: PlanTold, say: Say): string[] =>
  shortageOf(pile, plan).idle.map(({ garment, why }) =>
    say(why === 'not-in-all' ? 'count.not_in_all' : 'count.idle', { garment: nameOf(garment) }),
  )

/** What the pile makes now and what is still missing, from its plan, in a customer's words. */
export function planWords(told: PlanTold, language: Language): string {
  const { pile, plan, size, quilts } = told
  const { say } = language
  const byGarments = (role: number): boolean => pile.roles[role]!.garments
  const wanted = sum(pile.demand.flatMap((row) => row.filter((_, role) => byGarments(role))))
  const open = sum(plan.buy.filter(({ role }) => byGarments(role)).map(({ count }) => count))
  const gaps = {
    garments: new Set(plan.supply.map(({ garment }) => garment)).size,
    quilts,
    size: say(`trade.quilts.${size}`),
    wanted,
    given: wanted - open,
  }
  const sentences =
    open === 0
      ? [say('count.fills', gaps)]
      : [say('count.gives', gaps), ...openWords(told, language)]
  return [...sentences, ...idleWords(told, say)].filter((one) => one !== '').join(' ')
}
