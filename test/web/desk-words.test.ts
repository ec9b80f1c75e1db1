import { expect, test } from 'vitest'
import { garmentVerdicts, pileVerdicts } from '../../src/desk/decisions.ts'
import { queueLists } from '../../src/desk/queue.ts'
import { domains } from '../../src/garment/facts.ts'
import { severities } from '../../src/garment/grade.ts'
import { readPageWords } from '../../src/words/words.ts'
import { tables } from '../help/knowledge.ts'

const sources = [
  'implied',
  'measured',
  'read',
  'said',
  'confirmed',
  'staff',
  'bench',
  'label',
  'unsure',
  'counted',
  'untold',
]

/** What a flag may rest on, as the owner's tables name it. */
const because = tables.flatMap(({ rows }) =>
  rows.flatMap(({ give }) => (Array.isArray(give.because) ? (give.because as string[]) : [])),
)

// Kinds of garment are named by the intake's own options.
const values = Object.entries(domains)
  .filter(([fact]) => fact !== 'kind')
  .flatMap(([fact, all]) => all.map((value) => `desk.facts.${fact}.${value}`))

const keys = [
  ...Object.keys(domains).map((fact) => `desk.facts.${fact}.name`),
  ...new Set(because.map((fact) => `desk.facts.${fact}.name`)),
  ...values,
  ...sources.map((source) => `desk.from.${source}`),
  ...severities.map((severity) => `desk.severity.${severity}`),
  ...garmentVerdicts.flatMap((one) => [
    `desk.verdicts.garment.${one}`,
    `desk.stands.garment.${one}`,
  ]),
  ...pileVerdicts.flatMap((one) => [`desk.verdicts.pile.${one}`, `desk.stands.pile.${one}`]),
  ...queueLists.flatMap((list) => [
    `desk.tabs.${list}`,
    `desk.queue.title.${list}`,
    `desk.queue.empty.${list}`,
  ]),
]

test('flags rest on facts, and the tables name them', () => {
  expect(because.length).toBeGreaterThan(40)
})

test.each([...readPageWords()])('the desk finds its words in %s', (_, sentences) => {
  expect(keys.filter((key) => !sentences.get(key)?.trim())).toEqual([])
})
