import { expect, test } from 'vitest'
import { checkTable } from '../../src/flow/check-table.ts'
import { proveTable } from '../../src/flow/prove.ts'
import { columns } from '../../src/garment/facts.ts'
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
