import { colourWords } from '../../base/colour-words.ts'
import { once } from '../../textile/label/vocabulary.ts'
import { domains, sizes } from '../facts.ts'
import { english } from './lexicon/english.ts'
import { spanish } from './lexicon/spanish.ts'
import type { HelpingWords, Lexicon, TellingWords } from './lexicon/types.ts'
import { plainWord } from './tokens.ts'

export type Told = keyof TellingWords
export type Helper = Exclude<keyof HelpingWords, 'spellings' | 'ownAlone'>
export type LanguageCode = Lexicon['code']

/** A phrase that tells a value of a fact, or helps. */
export interface Entry<Role extends string = Told | Helper> {
  readonly role: Role
  readonly words: readonly string[]
  /** Empty where the role says it all. */
  readonly value: string
  readonly sure: boolean
  readonly language: LanguageCode
}

export const lexicons: readonly Lexicon[] = [english, spanish]

const allowed: Readonly<Record<Told, readonly string[]>> = {
  ...domains,
  size: sizes,
  colour: [...colourWords, 'many-colours'],
  mustUse: ['yes'],
}

const splitWords = (phrase: string): string[] =>
  plainWord(phrase)
    .split(/[\s\-/:]+/)
    .map((word) => word.replace(/'$/, ''))
    .filter((word) => word !== '')

/** "rojo/a" → its forms for both genders, one and many, small and dear. */
function spanishForms(phrase: string): string[] {
  const pair = /^(.*?)([\p{L}]+)\/a$/u.exec(phrase)
  if (!pair) return [phrase]
  const [, before = '', word = ''] = pair
  const stem = word.replace(/o$/, '')
  const soft = plainWord(stem).replace(/c$/, 'qu').replace(/g$/, 'gu').replace(/z$/, 'c')
  const forms = ['o', 'a', 'os', 'as'].map((end) => stem + end)
  const small = ['ito', 'ita', 'itos', 'itas'].map((end) => soft + end)
  return [...forms, ...small].map((form) => before + form)
}

function spanishNouns(phrase: string): string[] {
  const [head = '', ...rest] = phrase.split(' ')
  const plain = plainWord(head)
  const tail = rest.length > 0 ? ` ${rest.join(' ')}` : ''
  if (/s$/.test(plain)) return [phrase]
  const isVowel = /[aeiou]$/.test(plain)
  const forms = [head, isVowel ? `${head}s` : `${plain}es`]
  const stem = plain.replace(/[ao]$/, '')
  const soft = stem.replace(/c$/, 'qu').replace(/g$/, 'gu')
  if (/[ao]$/.test(plain)) forms.push(...['ito', 'ita', 'itos', 'itas'].map((end) => soft + end))
  else if (/[nre]$/.test(plain)) forms.push(...['cito', 'citos'].map((end) => plain + end))
  return forms.map((form) => form + tail)
}

function englishNouns(phrase: string): string[] {
  if (/s$/.test(phrase)) return [phrase]
  if (/(sh|ch|ss|x)$/.test(phrase)) return [phrase, `${phrase}es`]
  if (/[^aeiou]y$/.test(phrase)) return [phrase, `${phrase.slice(0, -1)}ies`, `${phrase}s`]
  return [phrase, `${phrase}s`]
}

function formsOf(phrase: string, role: Told | Helper, language: LanguageCode): string[] {
  const isNoun = role === 'kind'
  if (language === 'en') return isNoun ? englishNouns(phrase) : [phrase]
  const forms = spanishForms(phrase)
  return isNoun ? forms.flatMap(spanishNouns) : forms
}

function entriesOf(
  { code }: Lexicon,
  role: Told | Helper,
  value: string,
  phrases: readonly string[],
): Entry[] {
  return phrases
    .filter((phrase) => phrase !== '')
    .flatMap((marked) => {
      const sure = !marked.endsWith(' ?')
      const phrase = sure ? marked : marked.slice(0, -2)
      return formsOf(phrase, role, code).map((form) => ({
        role,
        value,
        sure,
        words: splitWords(form),
        language: code,
      }))
    })
}

/** What is wrong with a lexicon: a value that no fact has, a phrase that tells two values of one fact. */
export function faultsOf(lexicon: Lexicon): string[] {
  const faults: string[] = []
  for (const [fact, values] of Object.entries(lexicon.tells)) {
    const told = new Map<string, string>()
    for (const [value, phrases] of Object.entries(values as Record<string, readonly string[]>)) {
      if (!allowed[fact as Told].includes(value)) faults.push(`${fact}: no value ${value}`)
      for (const marked of phrases) {
        const phrase = marked.replace(/ \?$/, '')
        const before = told.get(phrase)
        if (before !== undefined && before !== value && phrase !== '')
          faults.push(`${fact}: "${phrase}" tells ${before} and ${value}`)
        told.set(phrase, value)
      }
    }
  }
  return faults
}

function allEntries(lexicon: Lexicon): Entry[] {
  const [fault] = faultsOf(lexicon)
  if (fault) throw new Error(`words of garments (${lexicon.code}): ${fault}`)
  const telling = Object.entries(lexicon.tells).flatMap(([role, values]) =>
    Object.entries(values as Record<string, readonly string[]>).flatMap(([value, phrases]) =>
      entriesOf(lexicon, role as Told, value, phrases),
    ),
  )
  const { spellings: _, ownAlone: __, ...helpers } = lexicon.helps
  const helping = Object.entries(helpers).flatMap(([role, phrases]) =>
    entriesOf(lexicon, role as Helper, '', phrases),
  )
  return [...telling, ...helping]
}

/** Every phrase by its first word. */
export const vocabulary = once((): ReadonlyMap<string, readonly Entry[]> => {
  const byFirst = new Map<string, Entry[]>()
  for (const entry of lexicons.flatMap(allEntries)) {
    const [first] = entry.words
    if (first === undefined) continue
    const same = byFirst.get(first)
    if (same) same.push(entry)
    else byFirst.set(first, [entry])
  }
  return byFirst
})

/** Every word that some phrase is made of, with the languages that know it. */
export const knownWords = once((): ReadonlyMap<string, ReadonlySet<LanguageCode>> => {
  const words = new Map<string, Set<LanguageCode>>()
  for (const entries of vocabulary().values())
    for (const { words: parts, language } of entries)
      for (const word of parts) {
        const languages = words.get(word) ?? new Set<LanguageCode>()
        words.set(word, languages.add(language))
      }
  return words
})

/** Words of one language that are ordinary words of the other, or stand there for something else. */
export const ownAlone = once(
  (): Readonly<Record<LanguageCode, ReadonlySet<string>>> => ({
    en: new Set(english.helps.ownAlone.map((word) => plainWord(word.replace(/ \?$/, '')))),
    es: new Set(spanish.helps.ownAlone.map((word) => plainWord(word.replace(/ \?$/, '')))),
  }),
)
