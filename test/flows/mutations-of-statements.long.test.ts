import { expect, test } from 'vitest'
import { parseSource } from '../../src/flow/source.ts'
import {
  each,
  faults,
  folder,
  folderWith,
  isCaught,
  refusals,
  rowOf,
  rowWith,
  textOf,
} from '../help/mutations.ts'

test.each(
  each([
    ['a statement that asks more than is so', 'spare_c: 10', 'spare_c: 50', 'heat-to-spare'],
    [
      'a statement nobody can read',
      'spare_c: 10',
      'spare_f: 10',
      'must-hold.yaml flows_invalid',
      'spare_f',
    ],
    [
      'a premise of pressing on a grade',
      '{ when: { consent: no-cut }, must:',
      '{ when: { consent: no-cut }, while: { method: press }, must:',
      'must-hold.yaml flows_invalid',
      'while goes with',
    ],
    [
      'an unwanted thing that is none',
      'never: [betters-grade]',
      'never: [worsens-grade]',
      'must-hold.yaml flows_invalid',
    ],
  ]),
)('%s', (_, mutation) => isCaught('tables/must-hold.yaml', mutation))

const lineAt = (place: string): string => {
  const [file, line] = place.split(':') as [string, string]
  return textOf(file).split('\n')[Number(line) - 1]!
}

test('a statement that fails is found at its line, its rows at theirs', () => {
  const capped = rowWith('limits', 'fibre-warm', 'limitC: 150', 'limitC: 160')
  const [found, ...more] = faults(folderWith('tables/limits.yaml', ...capped))
  expect(more).toEqual([])
  expect(lineAt(`${found!.file}:${found!.line}`)).toBe(`- id: ${found!.rule}`)
  expect(found).toMatchObject({
    rule: 'lowest-limit-rules',
    example: { facts: { heat: 'warm' }, must: { most_c: 150 }, cameOut: 160 },
  })
  const { limits } = (found!.example as { because: Record<string, { at: string; row: string }[]> })
    .because
  expect(limits!.map(({ row }) => row)).toEqual(['label-hot', 'fibre-warm'])
  for (const { at, row } of limits!) expect(lineAt(at)).toContain(`- id: ${row}`)
})

test('facts that no row of limits speaks of are found, and no ceiling is made up for them', () => {
  const text = ['label-hot', 'fibre-hot'].reduce(
    (left, id) => left.replace(rowOf('limits', id), ''),
    textOf('tables/limits.yaml'),
  )
  const limits = parseSource(text, 'tables/limits.yaml')
  const tables = folder.tables.map((one) => (one.file === limits.file ? limits : one))
  expect(faults({ ...folder, tables })).toEqual([
    expect.objectContaining({ file: limits.file, rule: 'gap', example: { facts: {} } }),
  ])
})

test('the files as they stand have no fault', () => {
  expect(faults(folder)).toEqual([])
  expect(refusals(folder)).toEqual([])
})
