import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { parse } from 'yaml'
import type { Flow } from '../../src/flow/grammar.ts'
import { missingWords, readPageWords } from '../../src/words/words.ts'

const home = new URL('../../flows/intake/', import.meta.url)
const flow = parse(readFileSync(new URL('flow.yaml', home), 'utf8')) as Flow
const languages = readPageWords(new URL('words/', home))
const questions = flow.parts.flatMap((part) => part.questions)

const wanted = questions.flatMap(({ id, options = [], unit }) => [
  `${id}.ask`,
  `${id}.why`,
  ...options.map(
    (option) => `${id}.options.${typeof option === 'string' ? option : option.option}`,
  ),
  ...(unit ? [`units.${unit}`] : []),
])

test('the intake speaks English and Spanish, and no language says less than another', () => {
  expect([...languages.keys()]).toEqual(expect.arrayContaining(['en', 'es']))
  expect(missingWords(languages)).toEqual([])
})

test.each([...languages])(
  'in "%s" each question, reason, option and unit has its words',
  (_, said) => {
    expect(wanted.length).toBeGreaterThan(2 * questions.length)
    expect(wanted.filter((key) => !said.has(key))).toEqual([])
  },
)

test.each([...languages])('in "%s" no sentence is empty', (_, said) => {
  expect([...said].filter(([, text]) => text.trim() === '').map(([key]) => key)).toEqual([])
})

/**
 * Vowel groups, without a silent e at the end: "whole" 1, "used" 1, "pieces" 2, "little" 2. It hears
 * two vowels side by side as one, so "idea" and "polyester" count one too few; such words are rare here.
 */
function syllables(word: string): number {
  const heard = word
    .toLowerCase()
    .replace(/[^a-z]/g, ' ')
    .replace(/(?<=[aeiouy].*[^aeiouytd])ed\b/g, '')
    .replace(/(?<=[aeiouy].*[^aeiouyscgxz])(?<!sh|ch|[^aeiouy]l)es\b/g, '')
    .replace(/(?<=[aeiouy].*[^aeiouy])(?<![^aeiouy]l)e\b/g, '')
  return Math.max(1, heard.match(/[aeiouy]+/g)?.length ?? 0)
}

const wordsOf = (text: string) => text.match(/[A-Za-z][A-Za-z'-]*/g) ?? []
const sentencesOf = (text: string) => text.split(/(?<=[.?!]["']?)\s+/)
const total = (numbers: number[]) => numbers.reduce((sum, number) => sum + number, 0)

/**
 * The grade at a school in the United States at which a text can be read. Kincaid, Fishburne, Rogers
 * and Chissom, "Derivation of New Readability Formulas for Navy Enlisted Personnel", Research Branch
 * Report 8-75, Naval Technical Training Command, 1975: the Flesch-Kincaid grade level.
 */
function grade(sentences: readonly string[]): number {
  const words = sentences.flatMap(wordsOf)
  const perSentence = words.length / sentences.length
  const perWord = total(words.map(syllables)) / words.length
  return 0.39 * perSentence + 11.8 * perWord - 15.59
}

// Counted by ear: common practice, no source.
test.each([
  ['quilt', 1],
  ['whole', 1],
  ['the', 1],
  ['used', 1],
  ['dressed', 1],
  ['clothes', 1],
  ['needed', 2],
  ['pieces', 2],
  ['patches', 2],
  ['little', 2],
  ['garment', 2],
  ['babies', 2],
  ['e-mail', 2],
  ["garment's", 2],
  ['anything', 3],
])('"%s" has %i syllables', (word, count) => {
  expect(syllables(word)).toBe(count)
})

// Worked example of Wikipedia, "Flesch–Kincaid readability tests": 13 words, 24 syllables, grade 11.3.
test('the reading grade agrees with a worked example', () => {
  const example =
    'The Australian platypus is seemingly a hybrid of a mammal and reptilian creature.'
  expect(grade([example])).toBeCloseTo(11.3, 1)
})

test.each(['ask', 'help', 'why'])(
  'the English words of "%s" read at the sixth grade or below',
  (part) => {
    const sentences = [...languages.get('en')!]
      .filter(([key]) => key.endsWith(`.${part}`) || key.endsWith(`.${part}_photo`))
      .flatMap(([, text]) => sentencesOf(text))
    expect(sentences.length).toBeGreaterThan(questions.length / 2)
    expect(grade(sentences)).toBeLessThanOrEqual(6)
    expect(total(sentences.map((one) => grade([one]))) / sentences.length).toBeLessThanOrEqual(6)
  },
)
