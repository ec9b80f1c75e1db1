import { describe, expect, test } from 'vitest'
import { Unreadable } from '../../src/flow/finding.ts'
import { readFlow, readTable } from '../../src/flow/read.ts'
import { parseSource } from '../../src/flow/source.ts'
import { parcelText } from './parcels.ts'

const findingsIn = (text: string, read: typeof readFlow | typeof readTable = readFlow) => {
  const source = parseSource(text, 'a.yaml')
  try {
    read(source.value, source)
  } catch (error) {
    if (error instanceof Unreadable) return error.findings
    throw error
  }
  return []
}

describe('a file remembers its lines', () => {
  const source = parseSource(
    '# a note\nname: x\nlist:\n  - one\n  - { two: 2,\n      three: 3 }\n',
    'a',
  )

  test.each<[(string | number)[], number]>([
    [[], 2],
    [['name'], 2],
    [['list'], 3],
    [['list', 0], 4],
    [['list', 1], 5],
    [['list', 1, 'three'], 6],
    [['list', 1, 'four'], 5],
    [['list', 9], 3],
    [['nothing', 'there'], 2],
  ])('%j stands on line %i', (path, line) => {
    expect(source.lineOf(path)).toBe(line)
  })
})

describe('a file that is no YAML', () => {
  test.each([
    ['an open bracket', 'a: 1\nb: [1, 2\n', 3],
    ['a key twice', 'a: 1\nb: 2\na: 3\n', 3],
    ['a tab for indenting', 'a:\n\t- 1\n', 2],
  ])('with %s is a finding with its line', (_, text, line) => {
    const { findings } = parseSource(text, 'a.yaml')
    expect(findings[0]).toMatchObject({ file: 'a.yaml', line, rule: 'yaml' })
  })

  test('aliases that would grow to gigabytes are a finding', () => {
    const lines = ['a0: &a0 [x, x, x, x, x, x, x, x, x, x]']
    for (let at = 1; at < 9; at += 1) {
      lines.push(
        `a${at}: &a${at} [${Array(10)
          .fill(`*a${at - 1}`)
          .join(', ')}]`,
      )
    }
    const { findings, value } = parseSource(lines.join('\n'), 'a.yaml')
    expect(value).toBeUndefined()
    expect(findings.map(({ rule }) => rule)).toEqual(['yaml'])
  })

  test('an empty file is read as nothing and refused as a flow', () => {
    expect(findingsIn('')).toHaveLength(1)
  })

  test('the reader reports what the parser found', () => {
    expect(findingsIn('flow: [')[0]).toMatchObject({ rule: 'yaml' })
  })
})

describe('a flow that breaks the grammar', () => {
  test('is read when it does not', () => {
    expect(findingsIn(parcelText)).toEqual([])
  })

  test.each<[string, string, string]>([
    ['an unknown kind', 'kind: photo', 'kind: film'],
    ['an unknown word', 'max: 2', 'mux: 2'],
    ['no reader', 'read_by: [price]', 'read_by: []'],
    ['a name with a blank', 'unit: kg', 'unit: "k g"'],
    ['an unknown guard', 'when: { answer: glass }', 'when: { ansr: glass }'],
    ['half a kilo as a bound', 'min: 1', 'min: 1.5'],
  ])('%s is a finding on its line', (_, from, to) => {
    const line = parcelText.slice(0, parcelText.indexOf(from)).split('\n').length
    const [first] = findingsIn(parcelText.replace(from, to))
    expect(first).toMatchObject({ file: 'a.yaml', line, rule: 'grammar' })
  })

  test('every finding is kept, and the first names the failure', () => {
    const broken = parcelText.replace('kind: photo', 'kind: film').replace('kind: text', 'kind: x')
    expect(findingsIn(broken)).toHaveLength(2)
    expect(() => readFlow(parseSource(broken, 'b.yaml').value)).toThrow('flows_invalid')
  })
})

test('a table row with a cell of no known shape is a finding on its line', () => {
  const text = [
    'table: t',
    'hit: first',
    'reads: [a]',
    'gives: [b]',
    'rows:',
    '  - { id: one, when: {}, give: { b: x }, source: invented }',
    '  - id: two',
    '    when:',
    '      a: { above: 3 }',
    '    give: { b: x }',
    '    source: invented',
  ].join('\n')
  expect(findingsIn(text, readTable)[0]).toMatchObject({ line: 9, rule: 'grammar' })
})
