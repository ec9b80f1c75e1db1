import { expect, test } from 'vitest'
import { betterKeys } from '../../src/garment/better-keys.ts'
import { wordKeys } from '../../src/quilt/word-keys.ts'
import { flatten } from '../../src/words/words.ts'
import { acts, layouts, rates, readYaml, tables } from '../help/knowledge.ts'

const languages = ['en', 'es'].map(
  (code) => [code, flatten(readYaml(`tables/words/${code}.yaml`) as never)] as const,
)

const wanted = new Set([...wordKeys({ tables, layouts, rates }), ...betterKeys(acts)])

test.each(languages)(
  'every code that is shown has its sentences in %s, and none is idle',
  (_, said) => {
    expect([...wanted].filter((key) => !said.has(key))).toEqual([])
    // A step for the packing list may stand with any reason.
    const packing = (key: string) => wanted.has(key.replace(/\.pack$/, '.next'))
    expect([...said.keys()].filter((key) => !wanted.has(key) && !packing(key))).toEqual([])
  },
)

test.each(languages)('no sentence in %s is empty or speaks of rags and scraps', (_, said) => {
  const bad = [...said].filter(
    ([, text]) => text.trim() === '' || /\b(rags?|scraps?|trapos?|retazos?|retales?)\b/i.test(text),
  )
  expect(bad).toEqual([])
})

const longestWords = 20

test.each(languages)('a customer reads short sentences in %s', (_, said) => {
  const long = [...said]
    .filter(([key]) => /^(flags\..*\.(message|next|pack)|grades|better)/.test(key))
    .flatMap(([key, text]) =>
      text
        .split(/[.!?] /)
        .filter((sentence) => sentence.split(' ').length > longestWords)
        .map(() => key),
    )
  expect(long).toEqual([])
})

test('a reason that an owner adds is missed until it has its sentences', () => {
  const flags = tables.find(({ table }) => table === 'flags')!
  const more = { ...flags, rows: [...flags.rows, { ...flags.rows[0]!, id: 'moth-eaten' }] }
  const keys = wordKeys({
    tables: [more, ...tables.filter((one) => one !== flags)],
    layouts,
    rates,
  })
  expect(keys.filter((key) => !wanted.has(key))).toEqual([
    'flags.moth-eaten.message',
    'flags.moth-eaten.next',
    'flags.moth-eaten.staff',
  ])
})
