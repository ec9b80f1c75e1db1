import { expect, test } from 'vitest'
import { checkTable } from '../../src/flow/check-table.ts'
import { proveTable } from '../../src/flow/prove.ts'
import { columns, domains } from '../../src/garment/facts.ts'
import { gradingTables, wrongOutputs } from '../../src/garment/table-outputs.ts'
import { tables } from '../help/knowledge.ts'

const named = tables.map((table) => [table.table, table] as const)

test.each(named)('%s names only facts and values that there are', (_, table) => {
  expect(checkTable(table, columns())).toEqual([])
})

test.each(named)('%s reads no column in vain', (_, { reads, rows }) => {
  const read = new Set(rows.flatMap(({ when }) => Object.keys(when)))
  expect(reads.filter((column) => !read.has(column))).toEqual([])
})

test.each(named.filter(([, { hit }]) => hit === 'first'))(
  '%s answers every combination of facts and has no idle row',
  (_, table) => {
    expect(proveTable(table, columns()).findings).toEqual([])
  },
)

test('every fact of a garment matters to some row', () => {
  const read = new Set(tables.flatMap(({ rows }) => rows.flatMap(({ when }) => Object.keys(when))))
  expect(Object.keys(domains).filter((fact) => !read.has(fact))).toEqual([])
})

test('a reason rests on the facts its row looks at', () => {
  const flags = tables.find(({ table }) => table === 'flags')!
  const off = flags.rows.filter(({ when, give }) => {
    const facts = Object.keys(when).map((column) => (column === 'wish' ? 'layout' : column))
    return JSON.stringify(facts) !== JSON.stringify(give.because)
  })
  expect(off.map(({ id }) => id)).toEqual([])
})

test('every row names where its rule comes from', () => {
  const bare = tables.flatMap(({ rows }) => rows.filter(({ source }) => source.trim().length < 10))
  expect(bare.map(({ id }) => id)).toEqual([])
})

test('the tables give what grading can use', () => {
  expect(wrongOutputs(tables)).toEqual([])
})

test.each<[string, string, Record<string, unknown>]>([
  ['limits', 'label-hot', { limitC: 900 }],
  ['limits', 'label-hot', { setBy: 'luck' }],
  ['permit', 'otherwise', { most: 'melt' }],
  ['testing', 'otherwise', { testFirst: 'no' }],
  ['backing', 'fine', { holds: null }],
  ['cautions', 'tie', { code: 'Mind the tie' }],
  ['flags', 'thin', { severity: 'awful' }],
  ['flags', 'thin', { for: [] }],
  ['layout-fit', 'cuts-well', { fits: 'yes' }],
])('in %s, %s giving %j is found', (name, row, give) => {
  const some = tables.map((table) => ({
    ...table,
    rows: table.rows.map((one) =>
      table.table === name && one.id === row ? { ...one, give: { ...one.give, ...give } } : one,
    ),
  }))
  expect(wrongOutputs(some).map((found) => [found.table, found.row])).toEqual([[name, row]])
})

test('a table that grading asks and that is not there is found', () => {
  expect(wrongOutputs([]).map(({ table }) => table)).toEqual(gradingTables)
})
