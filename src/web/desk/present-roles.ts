import type { GivenRoles } from '../../desk/garment-roles.ts'
import type { Review } from '../../desk/review.ts'
import type { Garment } from '../../intake/pile.ts'
import { type Role, roles } from '../../quilt/layout.ts'
import { calledOf, type Pile as PileToPlan } from '../../quilt/plan/instance.ts'
import type { Language } from '../../words/words.ts'
import { nameOf } from '../chat/present-garment.ts'
import { deskPaths } from './paths.ts'
import { readerAt } from './present-garment.ts'
import type { RolesForm } from './view-roles.ts'
import type { Choice } from './view-what-if.ts'
import { momentWords } from './when.ts'

/** Roles that garments play in a quilt, to choose from. */
export const rolesToPlay = ({ roles: all }: PileToPlan, { say }: Language): Choice[] =>
  roles
    .filter((role) => all.some((one) => one.garments && calledOf(one) === role))
    .map((role) => ({ value: role, label: say(`trade.roles.${role}`) }))

export const roleNames = (given: readonly Role[], { say, locale }: Language): string =>
  new Intl.ListFormat(locale).format(given.map((role) => say(`trade.roles.${role}`)))

function standingWords(given: GivenRoles | undefined, language: Language): string {
  const { say, locale } = language
  if (!given) return say('desk.plan.roles.any')
  const by = say('desk.by', { name: given.by, at: momentWords(given.at, locale) })
  return say('desk.plan.roles.given', { roles: roleNames(given.roles, language), by })
}

/** Null where the quilt has one role for garments, or none. */
export function rolesForm(
  { row, roles: given }: Pick<Review, 'row' | 'roles'>,
  garment: Garment,
  pile: PileToPlan,
  { csrf, language }: { readonly csrf: string; readonly language: Language },
): RolesForm | null {
  const choices = rolesToPlay(pile, language)
  if (choices.length < 2) return null
  const standing = given.get(garment.n)
  const name = nameOf(garment, readerAt(language))
  return {
    n: garment.n,
    title: language.say('desk.plan.roles.title', { name }),
    standing: standingWords(standing, language),
    postTo: deskPaths.roles(row.number, garment.n),
    csrf,
    seen: standing?.at ?? 0,
    choices,
    checked: standing?.roles ?? [],
  }
}
