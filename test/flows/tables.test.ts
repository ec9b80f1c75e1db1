import { expect, test } from 'vitest'
import { checkTable } from '../../src/flow/check-table.ts'
import { proveTable } from '../../src/flow/prove.ts'
import { columns, domains } from '../../src/garment/facts.ts'
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
