import { expect, test } from 'vitest'
import { readStatements } from '../../src/garment/must-hold.ts'
import { broken } from '../../src/garment/prove.ts'
import { breaking } from '../help/breaking.ts'
import { brokenBy, setOf, statements } from '../help/changed-tables.ts'
import { knowledge, tables } from '../help/knowledge.ts'

test.each(statements.map((one) => [one.says, one] as const))('%s', (_, one) => {
  expect(broken([one], setOf(tables), knowledge)).toEqual([])
})

const byDemand = (demand: string) =>
  statements
    .filter((one) => 'holds' in one && one.holds.some(({ must }) => demand in must))
    .map(({ id }) => id)

test('every statement is broken by some change, but the one that the plan keeps by itself', () => {
  const unbroken = statements.filter(({ id }) => !breaking.some(([broken]) => broken === id))
  expect(unbroken.map(({ id }) => id)).toEqual(byDemand('spare_c'))
})

test.each(
  breaking.map(([id, ...changes]) => ({
    id,
    changes,
    rows: changes.map(([table, row]) => `${row} of ${table}`).join(' and '),
  })),
)('$id is seen to fail when $rows is changed', ({ id, changes }) => {
  const one = statements.filter((each) => each.id === id)
  expect(brokenBy(changes, one).map((each) => [each.id, each.says])).toEqual([[id, one[0]!.says]])
})

test('the spare heat is measured: a demand of 40 °C does not hold', () => {
  const more = readStatements([
    {
      id: 'more',
      says: 'more',
      holds: [{ when: {}, while: { method: ['fuse'] }, must: { spare_c: 40 } }],
    },
  ])
  expect(broken(more, setOf(tables), knowledge)).toHaveLength(1)
})

test('a statement that names an unknown outcome is refused', () => {
  expect(() =>
    readStatements([{ id: 'x', says: 'x', holds: [{ when: {}, must: { colour: 'red' } }] }]),
  ).toThrow(/flows_invalid/)
})
