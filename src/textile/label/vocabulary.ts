import type { FibreKey } from '../fibres.ts'
import { labelLanguages } from '../languages/all.ts'
import type { CareWords, LabelWords, LanguageCode, Section } from '../languages/types.ts'
import { fold } from './clean.ts'
import { unusualNames } from './codes.ts'

export type Role = 'fibre' | 'section' | keyof LabelWords | keyof CareWords

/** What a word or phrase may stand for, with the languages that say so. */
export interface Meaning {
  readonly fibre?: FibreKey
  readonly section?: Section
  readonly unusual?: boolean
  readonly languages: LanguageCode[]
}

export interface Term {
  readonly words: readonly string[]
  readonly comma: boolean
  readonly roles: Map<Role, Meaning>
}

// Chinese, Japanese and Korean signs all stand above this code.
const firstSign = 0x2e80

const wordsOf = (phrase: string): string[] =>
  fold(phrase)
    .split(/[^\p{L}\d]+/u)
    .filter((word) => word !== '')

export class Vocabulary {
  /** Terms in Latin letters by their first word, the longest first. */
  readonly byFirst = new Map<string, Term[]>()
  /** Terms written without spaces: Chinese, Japanese, Korean. */
  readonly runs = new Map<string, Term>()
  longestRun = 1
  private readonly terms = new Map<string, Term>()

  add(phrase: string, role: Role, language: LanguageCode, says: Partial<Meaning> = {}): void {
    const isRun = phrase.charCodeAt(phrase.length - 1) >= firstSign
    const words = isRun ? [phrase.toLowerCase().replaceAll(' ', '')] : wordsOf(phrase)
    const name = words.join(' ')
    const term = this.terms.get(name) ?? { words, comma: phrase.includes(','), roles: new Map() }
    const meaning = term.roles.get(role)
    if (!meaning) term.roles.set(role, { languages: [language], ...says })
    else if (!meaning.languages.includes(language) && meaning.fibre === says.fibre)
      meaning.languages.push(language)
    if (this.terms.has(name)) return
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
  }
  for (const name of unusualNames)
    if (!vocabulary.single(fold(name))?.roles.has('fibre'))
      vocabulary.add(name, 'fibre', 'en', { fibre: 'other', unusual: true })
  return vocabulary.finish()
}

function careVocabulary(): Vocabulary {
  const vocabulary = new Vocabulary()
  for (const { code, care } of labelLanguages)
    for (const [role, phrases] of Object.entries(care))
      for (const phrase of phrases) vocabulary.add(phrase, role as Role, code)
  return vocabulary.finish()
}

export const shareWords = shareVocabulary()
export const careWords = careVocabulary()

const everyWord = new Set([...shareWords.all(), ...careWords.all()].flatMap(({ words }) => words))

export const isLabelWord = (folded: string): boolean => everyWord.has(folded)

export const isPureWord = (folded: string): boolean =>
  shareWords.single(folded)?.roles.has('pure') ?? false
