import { describe, expect, test } from 'vitest'
import { checkFlow } from '../../src/flow/check.ts'
import type { Finding } from '../../src/flow/finding.ts'
import { readFlow } from '../../src/flow/read.ts'
import { parseSource } from '../../src/flow/source.ts'
import { parcelReaders, parcelRules, parcelText } from './parcels.ts'

const everything = { has: () => true }

const check = (text: string, words: { has(key: string): boolean } = everything): Finding[] => {
  const where = parseSource(text, 'parcels.yaml')
  return checkFlow(readFlow(where.value, where), {
    rules: {
      ...parcelRules,
      looks_ahead: { reads: ['contents'], holds: () => true },
      looks_at_items: { reads: ['size'], holds: () => true },
      looks_nowhere: { reads: ['hat'], holds: () => true },
    },
    readers: parcelReaders,
    words: new Map([
      ['en', everything],
      ['es', words],
    ]),
    drawings: ['scales'],
    cautions: ['sharp'],
    where,
  })
}

/** The text with one place changed; refuses a test whose place is not there. */
const changed = (from: string, to: string): string => {
  if (!parcelText.includes(from)) throw new Error(`the flow has no "${from}"`)
  return parcelText.replace(from, to)
}

test('a sound flow has no findings', () => {
  expect(check(parcelText)).toEqual([])
})

test('a drawing and cautions that are there have no findings', () => {
  expect(check(changed('kind: confirm', 'kind: confirm\n        drawing: scales'))).toEqual([])
  expect(check(changed('kind: confirm', 'kind: confirm\n        cautions: [sharp]'))).toEqual([])
})

test('a question is no orphan where a path comes by passing another by', () => {
  const edge = '        next:\n          - { to: contents }\n'
  const bypass = `id: floor\n        when: { rule: needs_two_people }\n${edge}`
  const text = changed('id: floor\n', bypass).replace(
    '      - id: contents\n',
    '      - { id: stairs, kind: text, read_by: [clerk] }\n      - id: contents\n',
  )
  expect(check(text)).toEqual([])
})

describe('a flow is refused for', () => {
  test.each<[string, string, string, string, string]>([
    ['an unknown rule', '{ rule: goes_abroad }', '{ rule: flies }', 'unknown-rule', 'flies'],
    [
      'an unknown rule of an option',
      'when: { rule: stays_here }',
      'when: { rule: flies }',
      'unknown-rule',
      'flies',
    ],
    [
      'an unknown rule of an edge',
      'when: { rule: needs_two_people }, to',
      'when: { rule: flies }, to',
      'unknown-rule',
      'flies',
    ],
    ['an unknown reader', 'read_by: [price]', 'read_by: [price, cook]', 'unknown-reader', 'cook'],
    ['an answer nobody reads', 'read_by: [price]', 'read_by: [cook]', 'answer-unread', 'nobody'],
    [
      'a rule as reader that does not look',
      'read_by: [price]',
      'read_by: [price, stays_here]',
      'unknown-reader',
      'stays_here',
    ],
    [
      'an unknown drawing',
      'kind: confirm',
      'kind: confirm\n        drawing: map',
      'unknown-drawing',
      'map',
    ],
    [
      'an unknown caution',
      'kind: confirm',
      'kind: confirm\n        cautions: [hot]',
      'unknown-caution',
      'hot',
    ],
    ['an edge to nowhere', 'to: floor', 'to: cellar', 'edge-nowhere', 'cellar'],
    ['an edge backwards', '{ to: picture }', '{ to: size }', 'edge-nowhere', 'come later'],
    ['an edge to itself', '{ to: picture }', '{ to: contents }', 'edge-nowhere', 'come later'],
    [
      'an edge into another part',
      '{ to: picture }',
      '{ to: contact }',
      'edge-nowhere',
      'part last',
    ],
    ['a dead end', '          - { to: weight }\n', '', 'dead-end', 'no edge'],
    [
      'an orphan',
      '{ rule: needs_two_people }, to: floor',
      '{ rule: needs_two_people }, to: contents',
      'orphan',
      'floor',
    ],
    [
      'an edge behind an unconditional one',
      '          - { to: weight }\n',
      '          - { to: weight }\n          - { to: floor }\n',
      'edge-unreachable',
      'floor',
    ],
    [
      'an edge whose answers were all taken before',
      '          - { to: weight }\n',
      '          - { when: { answer: [small] }, to: floor }\n          - { to: weight }\n',
      'edge-unreachable',
      'floor',
    ],
    [
      'an edge whose rule was asked before',
      '          - { to: contents }\n',
      '          - { when: { rule: needs_two_people }, to: care }\n          - { to: contents }\n',
      'edge-unreachable',
      'care',
    ],
    ['an answer that is no option', 'answer: glass', 'answer: glas', 'unknown-answer', 'glas'],
    ['two questions of one id', 'id: care', 'id: floor', 'duplicate-id', 'another question'],
    ['two parts of one id', 'id: last', 'id: sender', 'duplicate-id', 'another part'],
    [
      'a second repeated part',
      '- id: last',
      '- id: last\n    repeat: true',
      'second-repeat',
      'one',
    ],
    ['a limit without repeating', '- id: last', '- id: last\n    most: 2', 'field-idle', 'most'],
    ['a question called end', 'id: care', 'id: end', 'reserved-id', 'end'],
    [
      'a choice without options',
      '        options: [here, abroad]\n',
      '',
      'field-missing',
      'options',
    ],
    ['a number without bounds', '        max: 40\n', '', 'field-missing', 'max'],
    ['a number without a unit', '        unit: kg\n', '', 'field-missing', 'unit'],
    [
      'a field of another kind',
      'kind: confirm',
      'kind: confirm\n        max: 3',
      'field-idle',
      'max',
    ],
    ['a range that holds nothing', 'min: 1', 'min: 41', 'empty-range', '41'],
    ['an option twice', '[none, glass', '[none, glass, glass', 'duplicate-option', 'glass'],
    [
      'options that all hang on rules',
      '[small, large, { option',
      '[{ option: small, when: { rule: stays_here } }, { option',
      'dead-end',
      'no option',
    ],
    [
      'a rule that reads its own question before it is asked',
      'id: contents\n',
      'id: contents\n        when: { rule: looks_ahead }\n',
      'rule-reads',
      'comes later',
    ],
    [
      'a rule that reads a later question',
      'rule: needs_two_people',
      'rule: looks_ahead',
      'rule-reads',
      'contents',
    ],
    [
      'a rule that reads single items from outside',
      'kind: contact',
      'kind: contact\n        when: { rule: looks_at_items }',
      'rule-reads',
      'single items',
    ],
    [
      'a rule that reads a question which is not there',
      '{ rule: goes_abroad }',
      '{ rule: looks_nowhere }',
      'rule-reads',
      'hat',
    ],
  ])('%s', (_, from, to, rule, message) => {
    const found = check(changed(from, to)).filter((finding) => finding.rule === rule)
    expect(found.map((finding) => finding.message).join()).toContain(message)
  })

  test('words that one language lacks', () => {
    const lacking = (key: string) =>
      check(parcelText, { has: (asked) => asked !== key }).map(({ rule, example }) => [
        rule,
        example,
      ])
    for (const key of ['size.ask', 'size.why', 'size.options.huge', 'floor.options.yes']) {
      expect(lacking(key)).toEqual([['words-missing', `es: ${key}`]])
    }
    expect(lacking('size.help')).toEqual([])
  })
})

test('a finding names the file and the line', () => {
  const text = changed('to: floor', 'to: cellar')
  const line = text.slice(0, text.indexOf('to: cellar')).split('\n').length
  expect(check(text)).toContainEqual(
    expect.objectContaining({ file: 'parcels.yaml', line, rule: 'edge-nowhere' }),
  )
})

test('a dead end is shown by the answers that find no edge', () => {
  const found = check(changed('          - { to: weight }\n', ''))
  expect(found.flatMap(({ example }) => example ?? [])).toEqual([
    'size = large',
    'size = huge',
    'size = (left to a person)',
  ])
  expect(found.filter(({ rule }) => rule === 'orphan').map(({ message }) => message)).toEqual([
    'weight: no path comes to this question',
    'floor: no path comes to this question',
  ])
})
