import type { FibreKey } from '../fibres.ts'
import { labelLanguages } from '../languages/all.ts'
import { doubtingWords } from '../languages/doubting.ts'
import { furtherCare } from '../languages/further-care.ts'
import type { CareWords, LabelWords, LanguageCode, Section } from '../languages/types.ts'
import { fold } from './clean.ts'
import { unusualNames } from './codes.ts'
import { tradeNames } from './trade-names.ts'

export type Role = 'fibre' | 'section' | keyof LabelWords | keyof CareWords

/** What a word or phrase may stand for, with the languages that say so. */
export interface Meaning {
  readonly role: Role
  readonly fibre?: FibreKey
  readonly section?: Section
  readonly unusual?: boolean
  readonly languages: LanguageCode[]
}

export interface Term {
  readonly words: readonly string[]
  /** Commas and slashes that the phrase itself holds. */
  readonly marks: string
  readonly roles: Meaning[]
}

export const meaningOf = (term: Term | null | undefined, role: Role): Meaning | undefined =>
  term?.roles.find((meaning) => meaning.role === role)

// Chinese, Japanese and Korean signs all stand above this code.
export const firstSign = 0x2e80

function wordsOf(phrase: string): string[] {
  const folded = fold(phrase)
  if (/^[a-z]+$/.test(folded)) return [folded]
  return folded.split(/[^a-z\d]+/).filter((word) => word !== '')
}

const withTwoLetters: readonly LanguageCode[] = ['de', 'sv', 'da']
const twoLetters: Readonly<Record<string, string>> = {
  ä: 'ae',
  ö: 'oe',
  ü: 'ue',
  ø: 'oe',
  å: 'aa',
  æ: 'ae',
}

export class Vocabulary {
  /** Terms in Latin letters by their first word, the longest first. */
  readonly byFirst = new Map<string, Term[]>()
  /** Terms written without spaces: Chinese, Japanese, Korean. */
  readonly runs = new Map<string, Term>()
  longestRun = 1
  private readonly terms = new Map<string, Term>()

  /** Capitals without their own signs are printed with two letters: "HOEJ", "BUEGELN". */
  add(phrase: string, role: Role, language: LanguageCode, says: Partial<Meaning> = {}): void {
    this.put(phrase, role, language, says)
    if (!withTwoLetters.includes(language)) return
    const spelt = phrase.replaceAll(/[äöüøåæÄÖÜØÅÆ]/g, (sign) => twoLetters[sign.toLowerCase()]!)
    if (spelt !== phrase) this.put(spelt, role, language, says)
  }

  private put(phrase: string, role: Role, language: LanguageCode, says: Partial<Meaning>): void {
    const isRun = phrase.charCodeAt(phrase.length - 1) >= firstSign
    const words = isRun ? [phrase.toLowerCase().replaceAll(' ', '')] : wordsOf(phrase)
    const name = words.join(' ')
    const known = this.terms.get(name)
    const term = known ?? { words, marks: phrase.replaceAll(/[^,/]/g, ''), roles: [] }
    const meaning = term.roles.find((one) => one.role === role && one.section === says.section)
    if (!meaning) term.roles.push({ role, languages: [language], ...says })
    else if (!meaning.languages.includes(language) && meaning.fibre === says.fibre)
      meaning.languages.push(language)
    if (known) return
    this.terms.set(name, term)
    if (isRun) {
      this.runs.set(name, term)
      this.longestRun = Math.max(this.longestRun, name.length)
      return
    }
    const same = this.byFirst.get(words[0]!)
    if (same) same.push(term)
    else this.byFirst.set(words[0]!, [term])
  }

  finish(): this {
    for (const terms of this.byFirst.values()) terms.sort((a, b) => b.words.length - a.words.length)
    return this
  }

  single(word: string): Term | undefined {
    return this.byFirst.get(word)?.find((term) => term.words.length === 1)
  }

  all(): Iterable<Term> {
    return this.terms.values()
  }
}

function shareVocabulary(): Vocabulary {
  const vocabulary = new Vocabulary()
  for (const { code, fibres, alsoNamed, sections, words } of labelLanguages) {
    for (const [fibre, { names }] of Object.entries(fibres))
      for (const name of names) vocabulary.add(name, 'fibre', code, { fibre: fibre as FibreKey })
    for (const [fibre, names] of Object.entries(alsoNamed))
      for (const name of names) vocabulary.add(name, 'fibre', code, { fibre: fibre as FibreKey })
    for (const [section, names] of Object.entries(sections))
      for (const name of names)
        vocabulary.add(name, 'section', code, { section: section as Section })
    for (const [role, phrases] of Object.entries(words))
      for (const phrase of phrases) vocabulary.add(phrase, role as Role, code)
    for (const [role, phrases] of Object.entries(doubtingWords[code]))
      for (const phrase of phrases) vocabulary.add(phrase, role as Role, code)
  }
  // A trade mark is the same in every language.
  for (const { code } of labelLanguages)
    for (const [fibre, names] of Object.entries(tradeNames))
      for (const name of names) vocabulary.add(name, 'fibre', code, { fibre: fibre as FibreKey })
  for (const name of unusualNames)
    if (!meaningOf(vocabulary.single(fold(name)), 'fibre'))
      vocabulary.add(name, 'fibre', 'en', { fibre: 'other', unusual: true })
  return vocabulary.finish()
}

function careVocabulary(): Vocabulary {
  const vocabulary = new Vocabulary()
  for (const { code, care } of labelLanguages)
    for (const words of [care, furtherCare[code]])
      for (const [role, phrases] of Object.entries(words))
        for (const phrase of phrases) vocabulary.add(phrase, role as Role, code)
  return vocabulary.finish()
}

/** Makes a value when it is first asked for: the indexes cost more than a start may. */
export function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined
  return () => {
    made ??= { value: make() }
    return made.value
  }
}

/** What labels print around the shares of fibres. */
export const shareWords = once(shareVocabulary)
/** What labels print of care. */
export const careWords = once(careVocabulary)

const everyWord = once(() => {
  const words = new Set<string>()
  for (const vocabulary of [shareWords(), careWords()])
    for (const term of vocabulary.all()) for (const word of term.words) words.add(word)
  return words
})

const guessingRoles: ReadonlySet<Role> = new Set<Role>(['hedges', 'likeness', 'limits'])

const likenesses =
  'like touch poly look feel effect style faux mock imitation vegan eco artificial optik half'.split(
    ' ',
  )

const readWords = once(() => {
  const words = new Set<string>()
  for (const vocabulary of [shareWords(), careWords()])
    for (const { roles, words: parts } of vocabulary.all())
      if (!roles.every(({ role }) => guessingRoles.has(role)))
        for (const word of parts) words.add(word)
  // "Wool-like", "cotton touch", where it is no part of "with like colours", "touch up".
  for (const word of likenesses) words.delete(word)
  return words
})

/** A word that says something of the make-up or of care, and not only that it is a guess. */
export const isReadWord = (folded: string): boolean => readWords().has(folded)

export const isLabelWord = (folded: string): boolean => everyWord().has(folded)

export const isPureWord = (folded: string): boolean =>
  meaningOf(shareWords().single(folded), 'pure') !== undefined
