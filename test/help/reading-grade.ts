import { fleschKincaid } from 'flesch-kincaid'
import { IntlMessageFormat } from 'intl-messageformat'
import { syllable } from 'syllable'

type Part = ReturnType<IntlMessageFormat['getAst']>[number]

/** The kinds of parts that intl-messageformat's parser tells apart, by its numbers. */
const literal = 0
const pound = 7

/** What stands in gaps: a plain name of two syllables, as customers' own names are; a number is heard as one of two. */
const name = 'flannel'
const number = 'seven'

/** A message's texts: where it has several (one or many garments), the one of each case. */
export function textsOf(message: string): string[] {
  const parts = new IntlMessageFormat(message, 'en', undefined, { ignoreTag: true }).getAst()
  const cases = Math.max(1, ...parts.map(casesIn))
  return [...new Set(Array.from({ length: cases }, (_, at) => said(parts, at)))]
}

function casesIn(part: Part): number {
  if (!('options' in part)) return 1
  const options = Object.values(part.options)
  return Math.max(options.length, ...options.flatMap(({ value }) => value.map(casesIn)))
}

function said(parts: readonly Part[], at: number): string {
  return parts
    .map((part) => {
      if ('options' in part) {
        const options = Object.values(part.options)
        return said(options[at % options.length]!.value, at)
      }
      if (part.type === literal) return part.value
      return part.type === pound || part.type === 2 ? number : name
    })
    .join('')
}

const wordsIn = (text: string): string[] => text.match(/[A-Za-z][A-Za-z’'-]*|\d[\d.,/]*/g) ?? []

/** A sentence ends at a full stop, a question or exclamation mark or a line's end; a colon or semicolon ends none. */
const sentencesIn = (text: string): string[] =>
  text.split(/(?<=[.?!…]["'”’)]?)\s+|\n+/).filter((one) => wordsIn(one).length > 0)

const syllablesIn = (word: string): number => (/\d/.test(word) ? 2 : Math.max(1, syllable(word)))

export interface Reading {
  readonly grade: number
  readonly words: number
  readonly sentences: number
}

/**
 * The Flesch-Kincaid grade level of texts that are read one after another, the end of each ending a sentence: the
 * school year in the United States in which they can be read. Kincaid, Fishburne, Rogers and Chissom, "Derivation of
 * New Readability Formulas for Navy Enlisted Personnel", Research Branch Report 8-75, Naval Technical Training
 * Command, 1975; reckoned by the package flesch-kincaid, syllables counted by the package syllable.
 */
export function readingOf(texts: readonly string[]): Reading {
  const sentences = texts.flatMap(sentencesIn)
  const words = sentences.flatMap(wordsIn)
  const counts = {
    sentence: sentences.length,
    word: words.length,
    syllable: words.reduce((sum, word) => sum + syllablesIn(word), 0),
  }
  return { grade: fleschKincaid(counts), words: words.length, sentences: sentences.length }
}
