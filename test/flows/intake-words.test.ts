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
