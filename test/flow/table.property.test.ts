import fc from 'fast-check'
import { expect, test } from 'vitest'
import { matches } from '../../src/flow/cells.ts'
import { checkTable } from '../../src/flow/check-table.ts'
import { proveTable } from '../../src/flow/prove.ts'
import { readTable } from '../../src/flow/read.ts'
import { compileTable, decide, type TableFacts } from '../../src/flow/table.ts'
import type { Cell, Domains, Table } from '../../src/flow/table-grammar.ts'
import { steady } from './random.ts'

const domains: Domains = {
  one: ['a', 'b', 'c'],
  two: ['x', 'y'],
  three: { from: -2, to: 3 },
  four: ['p', 'q', 'r'],
}

const listCell = (values: readonly string[]): fc.Arbitrary<Cell> => {
  const several = fc.subarray([...values], { minLength: 1 })
  return fc.oneof(
    fc.constantFrom(...values),
    several,
    fc
      .subarray([...values], { minLength: 1, maxLength: values.length - 1 })
      .map((not) => ({ not })),
  )
}

const rangeCell: fc.Arbitrary<Cell> = fc
  .tuple(fc.integer({ min: -2, max: 3 }), fc.integer({ min: -2, max: 3 }), fc.nat(2))
  .map(([a, b, open]) => {
    const [from, to] = [Math.min(a, b), Math.max(a, b)]
    return open === 0 ? { from } : open === 1 ? { to } : { from, to }
  })

const when = fc.record(
  {
    one: listCell(['a', 'b', 'c']),
    two: listCell(['x', 'y']),
    three: rangeCell,
    four: listCell(['p', 'q', 'r']),
  },
  { requiredKeys: [] },
)

const anyTable: fc.Arbitrary<Table> = fc
  .tuple(fc.constantFrom('first', 'collect'), fc.array(when, { minLength: 1, maxLength: 9 }))
  .map(([hit, rows]) =>
    readTable({
      table: 'random',
      hit,
      reads: Object.keys(domains),
      gives: ['out'],
      rows: rows.map((cells, at) => ({
        id: `row${at}`,
        when: cells,
        give: { out: at },
        source: 'invented',
      })),
    }),
  )

/** Every combination of the given columns. */
function everyFacts(columns: readonly string[]): TableFacts[] {
  return columns.reduce<TableFacts[]>(
    (all, column) => {
      const domain = domains[column]!
      const values =
        'from' in domain
          ? Array.from({ length: domain.to - domain.from + 1 }, (_, at) => domain.from + at)
          : domain
      return all.flatMap((facts) => values.map((value) => ({ ...facts, [column]: value })))
    },
    [{}],
  )
}

const naive = (table: Table, facts: TableFacts): string[] => {
  const rows = table.rows.filter((row) =>
    Object.entries(row.when).every(([column, cell]) => {
      const value = facts[column]!
      if (typeof cell === 'string') return cell === value
      if (Array.isArray(cell)) return cell.includes(value as string)
      if ('not' in cell) return ![cell.not].flat().includes(value as string)
      const { from = -99, to = 99 } = cell
      return from <= (value as number) && (value as number) <= to
    }),
  )
  return (table.hit === 'first' ? rows.slice(0, 1) : rows).map(({ id }) => id)
}

test('a decision is that of reading the rows one by one', () => {
  fc.assert(
    fc.property(anyTable, (table) => {
      const compiled = compileTable(table, domains)
      for (const facts of everyFacts(Object.keys(domains))) {
        expect(decide(compiled, facts).map(({ id }) => id)).toEqual(naive(table, facts))
      }
    }),
    { ...steady, numRuns: 150 },
  )
})

test('the proof of a table is that of trying every combination', () => {
  fc.assert(
    fc.property(anyTable, (table) => {
      expect(checkTable(table, domains)).toEqual([])
      const used = Object.keys(domains).filter((name) => table.rows.some((row) => name in row.when))
      const space = everyFacts(used)
      const decided = space.map((facts) => naive(table, facts))
      const { findings, combinations, covered, taken } = proveTable(table, domains)

      expect(combinations).toBe(space.length)
      expect(covered).toBe(decided.filter((ids) => ids.length > 0).length)
      expect(taken).toEqual(
        table.rows.map(({ id }) => decided.filter((ids) => ids.includes(id)).length),
      )
      const hasGap = table.hit === 'first' && covered < space.length
      expect(findings.some(({ rule }) => rule === 'gap')).toBe(hasGap)
      expect(findings.filter(({ rule }) => rule === 'row-unreachable')).toHaveLength(
        taken.filter((count) => count === 0).length,
      )
    }),
    steady,
  )
})

test('the example of a gap is one, whatever the other facts are', () => {
  fc.assert(
    fc.property(anyTable, (table) => {
      const gap = proveTable(table, domains).findings.find(({ rule }) => rule === 'gap')
      fc.pre(gap !== undefined)
      const fixed = new Map(
        String(gap!.example)
          .split(', ')
          .map((pair) => pair.split('=') as [string, string]),
      )
      const inGap = everyFacts(Object.keys(domains)).filter((facts) =>
        [...fixed].every(([column, value]) => String(facts[column]) === value),
      )
      expect(inGap.length).toBeGreaterThan(0)
      for (const facts of inGap) expect(naive(table, facts)).toEqual([])
    }),
    steady,
  )
})

test('a cell takes nothing of another type', () => {
  expect(matches({ from: 1 }, '3')).toBe(false)
})
