import type { Condition } from '../../custody/conditions.ts'
import { handlingOf } from '../../custody/conditions.ts'
import type { State } from '../../custody/states.ts'
import type { KeptEntry } from '../../desk/custody-entries.ts'
import type { Located } from '../../desk/whereabouts.ts'
import type { Language, Say } from '../../words/words.ts'
import { custodyPaths } from './custody-paths.ts'
import type { LocatedLine } from './view-custody.ts'
import { momentWords } from './when.ts'

export const stateWords = (state: State, { say }: Language): string =>
  say(`custody.states.${state}`)

export const atWords = (state: State, place: string | null, language: Language): string =>
  language.say('custody.at', {
    state: stateWords(state, language),
    place: place ?? language.say('custody.nowhere'),
  })

export const byWords = (who: string | null, at: number, { say, locale }: Language): string =>
  say('custody.moved', { who: who ?? say('custody.customer'), at: momentWords(at, locale) })

export const conditionWords = (found: readonly Condition[], say: Say): string =>
  found.map((one) => say(`custody.conditions.${one}`)).join(', ')

export const handlingWords = (found: readonly Condition[], say: Say): string[] =>
  handlingOf(found).map(({ words }) => say(`custody.handling.${words}`))

/** A garment by its name, else by its kind; anything else by what it is. */
export const nameWords = (
  { name, garment, kind }: Pick<Located, 'name' | 'garment' | 'kind'>,
  { say }: Language,
): string =>
  name || (garment ? say(`intake.kind.options.${garment}`) : say(`custody.kinds.${kind}`))

export const locatedLine = (one: Located, language: Language): LocatedLine => ({
  code: one.code,
  href: custodyPaths.subject(one.pile, one.subject),
  name: nameWords(one, language),
  customer: one.customer,
  at: atWords(one.state, one.place, language),
  moved: byWords(one.by, one.since, language),
})

/** What an entry did: "Checked, hold it: checked and held · shelf 2". */
export function entryWords({ move, to, place }: KeptEntry, language: Language): string {
  const name = language.say(`custody.moves.${move}`)
  return to === null ? name : `${name}: ${atWords(to, place, language)}`
}
