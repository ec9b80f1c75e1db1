import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'
import { parse } from 'yaml'
import type { Flow } from '../../src/flow/grammar.ts'
import { examineFlow } from '../../src/intake/examine-flow.ts'
import { readFlowsFolder } from '../../src/intake/flows-folder.ts'
import { helpNames } from '../../src/papers/drawings/index.ts'
import { missingWords, readWritten } from '../../src/words/words.ts'

const home = new URL('../../flows/intake/', import.meta.url)
const flow = parse(readFileSync(new URL('flow.yaml', home), 'utf8')) as Flow
const languages = readWritten(new URL('words/', home))
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

describe('why something is asked', () => {
  const folder = readFlowsFolder(fileURLToPath(new URL('../', home)))
  const said = folder.words.intake

  /** The files with every reason of one language taken away, or left blank. */
  const without = (code: string, reason: string | undefined) => {
    const source = said.get(code)!
    const bare = Object.entries(source.value as Record<string, object>).map(([id, words]) => [
      id,
      'why' in words ? { ...words, why: reason } : words,
    ])
    const value = JSON.parse(JSON.stringify(Object.fromEntries(bare)))
    const intake = new Map([...said, [code, { ...source, value }]])
    return { ...folder, words: { ...folder.words, intake } }
  }

  test.each(
    [...languages.keys()].flatMap((code) => [[code, undefined] as const, [code, ' '] as const]),
  )('cannot be missing from any question in "%s" (%j)', (code, reason) => {
    const { findings } = examineFlow(without(code, reason), helpNames)
    const told = findings.map(({ message }) => message).join('\n')
    for (const { id } of questions) expect(told).toContain(`${id}: no words in ${code}`)
  })
})
