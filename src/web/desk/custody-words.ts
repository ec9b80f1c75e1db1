import type { Condition } from '../../custody/conditions.ts'
import { handlingOf } from '../../custody/conditions.ts'
import { moves } from '../../custody/moves.ts'
import type { State } from '../../custody/states.ts'
import type { KeptEntry } from '../../desk/custody-entries.ts'
import type { Located } from '../../desk/whereabouts.ts'
import type { Language, Say } from '../../words/words.ts'
import { custodyPaths } from './custody-paths.ts'
import type { LocatedLine } from './view-custody.ts'
import { momentWords } from './when.ts'

export const stateWords = (state: State, { say }: Language): string =>
  say(`custody.states.${state}`)

/** What is not in the house has no place: its state says so. */
export const atWords = (state: State, place: string | null, language: Language): string => {
  const words = stateWords(state, language)
  return place === null ? words : language.say('custody.at', { state: words, place })
}

export const byWords = (who: string | null, at: number, { say, locale }: Language): string =>
  say('custody.moved', { who: who ?? say('custody.customer'), at: momentWords(at, locale) })

export const conditionWords = (found: readonly Condition[], say: Say): string =>
  found.map((one) => say(`custody.conditions.${one}`)).join(', ')

export const handlingWords = (found: readonly Condition[], say: Say): string[] =>
  handlingOf(found).map(({ words }) => say(`custody.handling.${words}`))

/** A garment by its name, else by its kind; a bag by its garment; anything else by what it is and was called. */
export function nameWords(
  { name, garment, kind, told }: Pick<Located, 'name' | 'garment' | 'kind' | 'told'>,
  { say }: Language,
): string {
  const cloth = name || (garment ? say(`intake.kind.options.${garment}`) : '')
  if (kind === 'leftover' && cloth !== '') return say('custody.leftover_of', { name: cloth })
  if (cloth !== '') return cloth
  const what = say(`custody.kinds.${kind}`)
  return told === '' ? what : say('custody.thing', { kind: what, told })
}

export const locatedLine = (one: Located, language: Language): LocatedLine => ({
  code: one.code,
  href: custodyPaths.subject(one.pile, one.subject),
  name: nameWords(one, language),
  customer: one.customer,
  at: atWords(one.state, one.place, language),
  moved: byWords(one.by, one.since, language),
})

/** A move that leads to one state names it; one that leads back to where it was does not. */
const leadsBack = new Set<string>(moves.filter(({ to }) => to === 'before').map(({ move }) => move))

/** What an entry did: "Sewn · wall", "It turned up: taken apart · shelf 2". */
export function entryWords({ move, to, place }: KeptEntry, language: Language): string {
  const name = language.say(`custody.moves.${move}`)
  if (to !== null && leadsBack.has(move)) return `${name}: ${atWords(to, place, language)}`
  return place === null ? name : language.say('custody.at', { state: name, place })
}
