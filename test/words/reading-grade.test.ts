import { fileURLToPath } from 'node:url'
import { fleschKincaid } from 'flesch-kincaid'
import { syllable } from 'syllable'
import { describe, expect, test } from 'vitest'
import { readFlowsFolder } from '../../src/intake/flows-folder.ts'
import { wordsOf } from '../../src/intake/knowledge.ts'

import { acts } from '../help/knowledge.ts'
import { readingOf, textsOf } from '../help/reading-grade.ts'

/**
 * Whatever a customer reads in English, at the sixth grade or below. Measured twice: every page, question or mail as
 * a whole where it has 20 words or more, with its buttons and options, each of which is a sentence of its own; and
 * every single text of 10 words or more, in each of its cases. Shorter texts alone are too few words for the formula:
 * "Your name" would be grade −3, "Continue" 20.
 */
const bar = 6
const pageWords = 20
const textWords = 10

/** What only staff, bench and whoever runs the program read. */
const notCustomers = [
  /^(commands|bench|cut|custody|desk|papers|records)\./,
  /^printed\.(at|bench|quilting|sheets|tickets)\./,
  /^laid_out\.desk\./,
  /^failures\.(setting_invalid|flows_invalid|words_missing|folder_in_use|store_too_new|unknown_verb)$/,
  // what keeps records is told to the owner at the command line
  /^failures\.(file_(there|not_written|unread)|nothing_kept|backup_\w+|ledger_damaged|store_(not_empty|unfinished)|restore_differs)$/,
  /^trade\.(backing|cautions|interfacing|panels|press|setBy|teardown)\./,
  /^trade\.flags\..*\.staff$/,
  ...acts
    .filter(({ by }) => by === 'workshop')
    .map(({ act }) => RegExp(`^trade\\.better\\.acts\\.${act}$`)),
]

/** Names and no sentences: they stand within others. */
const names = [/^colours\./, /^fibres\./, /^trade\.(quilts|roles)\./, /^intake\.units\./]

const folder = readFlowsFolder(fileURLToPath(new URL('../../flows/', import.meta.url)))
const said = [...wordsOf(folder).get('en')!].filter(
  ([key]) => ![...notCustomers, ...names].some((each) => each.test(key)),
)

/** A question of the intake, a section of the owner's words, a mail or a page. */
function pageOf(key: string): string {
  const [first, second] = key.split('.') as [string, string]
  return ['intake', 'trade', 'mails'].includes(first) ? `${first}.${second}` : first
}

const { tagline, policies } = folder.shop.value as {
  readonly tagline: Readonly<Record<string, string>>
  readonly policies: readonly Readonly<Record<string, string>>[]
}

const texts: readonly (readonly [key: string, text: string])[] = [
  ...said.flatMap(([key, message]) => textsOf(message).map((text) => [key, text] as const)),
  ['shop.tagline', tagline.en!],
  ...policies.map(({ en }, n) => [`shop.policies.${n}`, en!] as const),
]

const pages = new Map<string, string[]>()
for (const [key, text] of texts) {
  const page = pageOf(key)
  pages.set(page, [...(pages.get(page) ?? []), text])
}

// Worked example of Wikipedia, "Flesch–Kincaid readability tests": 13 words, 24 syllables, grade 11.3. The package
// that counts syllables hears 26 in it: where it errs here, it makes a text harder.
test('the reading grade agrees with a worked example', () => {
  expect(fleschKincaid({ sentence: 1, word: 13, syllable: 24 })).toBeCloseTo(11.3, 1)
  const example =
    'The Australian platypus is seemingly a hybrid of a mammal and reptilian creature.'
  const { grade, words, sentences } = readingOf([example])
  expect({ words, sentences }).toEqual({ words: 13, sentences: 1 })
  expect(grade).toBeCloseTo(fleschKincaid({ sentence: 1, word: 13, syllable: 26 }), 6)
})

// Counted by ear: common practice, no source.
test.each([
  ['quilt', 1],
  ['clothes', 1],
  ['pieces', 2],
  ['garment', 2],
  ['little', 2],
  ['anything', 3],
  ['polyester', 4],
])('"%s" has %i syllables', (word, count) => {
  expect(syllable(word)).toBe(count)
})

test('each case of a message is a text, and a gap is a word', () => {
  expect(textsOf('{n, plural, one {One shirt} other {# shirts}} of {who}.')).toEqual([
    'One shirt of flannel.',
    'seven shirts of flannel.',
  ])
})

test('what is hard to read is found', () => {
  const legal =
    'Notwithstanding the aforementioned provisions, the undersigned acknowledges irrevocable responsibility.'
  expect(readingOf([legal]).grade).toBeGreaterThan(bar)
})

test('all that customers read is looked at', () => {
  expect(pages.size).toBeGreaterThan(80)
  expect(readingOf(texts.map(([, text]) => text)).words).toBeGreaterThan(9_000)
  for (const page of [
    'start',
    'status',
    'mails.question',
    'intake.kind',
    'trade.flags',
    'failures',
  ])
    expect([...pages.keys()]).toContain(page)
})

describe.each([...pages])('%s', (page, all) => {
  test('reads at the sixth grade or below, as a whole and text by text', () => {
    const whole = readingOf(all)
    const hard = all
      .map((text) => ({ text, ...readingOf([text]) }))
      .filter(({ words, grade }) => words >= textWords && grade > bar)
    expect(hard.map(({ text, grade }) => `${grade.toFixed(1)} ${text}`)).toEqual([])
    if (whole.words >= pageWords) expect([page, whole.grade <= bar]).toEqual([page, true])
  })
})
