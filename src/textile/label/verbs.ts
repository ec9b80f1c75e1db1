import type { LanguageCode } from '../languages/types.ts'
import { has, type Item } from './items.ts'
import { meaningOf, type Role, type Term } from './vocabulary.ts'

export type Verb = 'iron' | 'steam' | 'wash' | 'bleach' | 'tumble' | 'dry' | 'dryClean' | 'other'

export interface VerbAt {
  readonly verb: Verb
  readonly role: Role
  readonly at: number
  /** The wording itself forbids it. */
  readonly forbidden: boolean
}

const verbRoles: readonly (readonly [Role, Verb, boolean])[] = [
  ['ironNot', 'iron', true],
  ['washNot', 'wash', true],
  ['bleachNot', 'bleach', true],
  ['tumbleNot', 'tumble', true],
  ['dryCleanNot', 'dryClean', true],
  ['ironFree', 'other', false],
  ['noSteam', 'steam', true],
  ['iron', 'iron', false],
  ['dryClean', 'dryClean', false],
  ['handWash', 'wash', false],
  ['wash', 'wash', false],
  ['bleach', 'bleach', false],
  ['tumble', 'tumble', false],
  ['flatDry', 'dry', false],
  ['lineDry', 'dry', false],
  ['steam', 'steam', false],
  ['otherVerbs', 'other', false],
]

export const verbOf = (term: Term | null): Omit<VerbAt, 'at'> | null => {
  const found = verbRoles.find(([role]) => meaningOf(term, role))
  return found ? { role: found[0], verb: found[1], forbidden: found[2] } : null
}

export const verbsIn = (items: readonly Item[]): VerbAt[] =>
  items.flatMap(({ term }, at) => {
    const verb = verbOf(term)
    return verb ? [{ ...verb, at }] : []
  })

/** A mark that ends a phrase. */
export const endsPhrase = (item: Item | undefined): boolean =>
  item === undefined || (item.kind === 'mark' && /[.;!•·|。；、/,，*&+…]/.test(item.raw))

export const isNot = (item: Item): boolean =>
  has(item, 'not') || has(item, 'notAfter') || has(item, 'notEither')

/**
 * A word in its meaning for a verb: where it means something in the verb's own language, what it
 * means in others does not count ("no" in Portuguese, "bez" in Turkish).
 */
export function hasFor(item: Item, role: Role, languages: readonly LanguageCode[]): boolean {
  const meaning = meaningOf(item.term, role)
  if (!meaning) return false
  const shared = (codes: readonly LanguageCode[]) => codes.some((code) => languages.includes(code))
  return shared(meaning.languages) || !item.term!.roles.some((other) => shared(other.languages))
}

export const languagesOfVerb = (
  items: readonly Item[],
  { at, role }: VerbAt,
): readonly LanguageCode[] => meaningOf(items[at]!.term, role)?.languages ?? []

/** A word for how hot. */
export const isLevelWord = (item: Item): boolean =>
  has(item, 'cool') || has(item, 'warm') || has(item, 'hot')

export const isFiller = (item: Item): boolean => has(item, 'fillers')
