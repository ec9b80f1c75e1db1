import { expect, test } from 'vitest'
import { matches } from '../../src/flow/cells.ts'
import type { Table } from '../../src/flow/table-grammar.ts'
import type { Facts } from '../../src/garment/facts.ts'
import { grade } from '../../src/garment/grade.ts'
import { keeps, readStatements, type Statement } from '../../src/garment/must-hold.ts'
import { broken } from '../../src/garment/prove.ts'
import type { TableSet } from '../../src/garment/space.ts'
import { plainShirt } from '../help/garments.ts'
import { decideFrom, knowledge, readYaml, tables } from '../help/knowledge.ts'

const statements = readStatements(readYaml('tables/must-hold.yaml'))
const byId = new Map(statements.map((one) => [one.id, one]))

const setOf = (some: readonly Table[]): TableSet => ({
  tables: some,
  matches: matches as TableSet['matches'],
})

test.each(statements.map((one) => [one.says, one] as const))('%s', (_, one) => {
  expect(broken([one], setOf(tables), knowledge)).toEqual([])
})

type Change = readonly [table: string, row: string, give: Record<string, unknown> | null]

/** The tables with rows taken out (null) or giving something else. */
function changed(changes: readonly Change[]): Table[] {
  return tables.map((table) => {
    const mine = changes.filter(([name]) => name === table.table)
    const rows = table.rows.flatMap((row) => {
      const change = mine.find(([, id]) => id === row.id)
      if (!change) return [row]
      return change[2] ? [{ ...row, give: { ...row.give, ...change[2] } as typeof row.give }] : []
    })
    return { ...table, rows }
  })
}

const breaking: readonly (readonly [statement: string, ...changes: Change[]])[] = [
  ['no-heat-no-press', ['limits', 'fibre-none', { limitC: 110 }]],
  ['lowest-limit-rules', ['limits', 'label-cool', { limitC: 120 }]],
  ['unknown-fibre-stays-cold', ['limits', 'fibre-unknown', { limitC: 150 }]],
  ['unknown-fibre-stays-cold', ['flags', 'fibre-unknown', { severity: 'note' }]],
  ['unknown-pile-no-iron', ['limits', 'fibre-unknown-with-pile', null]],
  ['silent-label-is-not-hot', ['limits', 'label-says-nothing', { limitC: 200 }]],
  ['silent-label-is-not-hot', ['testing', 'label-says-nothing', { testFirst: false }]],
  ['cool-fuse-is-tested', ['permit', 'test-failed', { most: 'fuse-cool' }]],
  [
    'what-melts-is-not-fused',
    ['permit', 'trims-would-melt', null],
    ['limits', 'trims-that-melt', null],
  ],
  ['what-melts-is-not-fused', ['cautions', 'face-print', null]],
  [
    'screen-and-sublimated-stay-cool',
    ['permit', 'print-wants-cool', null],
    ['limits', 'print-screen', { limitC: 150 }],
  ],
  ['weak-cloth-is-held', ['backing', 'stretches', { holds: false }]],
  ['pile-is-not-fused-or-turned', ['permit', 'surface-takes-no-glue', null]],
  ['pile-is-not-fused-or-turned', ['layout-fit', 'nap-turned', null]],
  ['skins-and-film-need-a-person', ['limits', 'surface-no-iron', null]],
  ['skins-and-film-need-a-person', ['flags', 'fur', { severity: 'care' }]],
  ['historic-and-shattered-are-spared', ['flags', 'shattered', { severity: 'eyes' }]],
  ['unsafe-soil-is-not-posted', ['flags', 'do-not-post', null]],
  ['washing-is-respected', ['testing', 'not-washed', { testFirst: false }]],
  ['bleeding-is-kept-apart', ['cautions', 'bleeds', null]],
  ['small-children-are-safe', ['cautions', 'under-one', null]],
  ['pictures-stay-whole', ['layout-fit', 'graphic-cut-up', { fits: true }]],
  ['consent-and-cloth', ['flags', 'not-to-be-cut', { severity: 'eyes' }]],
  ['worse-is-never-hotter', ['limits', 'print-screen', { limitC: 100 }]],
  [
    'worse-is-never-hotter',
    ['permit', 'print-wants-cool', { most: 'press' }],
    ['permit', 'print-would-melt', { most: 'fuse-cool' }],
    ['limits', 'print-film-or-unknown', { limitC: 125 }],
  ],
  ['worse-is-never-better', ['flags', 'holes', null]],
  ['worse-is-never-better', ['flags', 'pests', { severity: 'care' }]],
  ['reasons-are-named', ['flags', 'thin', { for: ['maker'] }]],
  ['untold-is-never-sound', ['flags', 'consent-unknown', null]],
]

/** Whether a real grading at the facts named breaks one of the claims. */
function breaksInPractice(
  one: Statement,
  example: Record<string, unknown>,
  some: Table[],
): boolean {
  if ('worse' in one) return true
  const known = { ...knowledge, decide: decideFrom(some) }
  const facts = { ...plainShirt, ...example } as Facts
  const recipient = (example.recipient ?? 'adult') as 'adult'
  const grading = grade(facts, { recipient }, known)
  return one.holds.some((claim) => !keeps(claim, grading, known))
}

const cases = breaking.map(([id, ...changes]) => ({
  id,
  changes,
  rows: changes.map(([table, row]) => `${row} of ${table}`).join(' and '),
}))

test.each(cases)('$id is seen to fail when $rows is changed', ({ id, changes }) => {
  const some = changed(changes)
  const one = byId.get(id)!
  const found = broken([one], setOf(some), { ...knowledge, decide: decideFrom(some) })
  expect(found.map((each) => each.id)).toEqual([id])
  expect(found[0]!.says).toBe(one.says)
  expect(breaksInPractice(one, found[0]!.example, some)).toBe(true)
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
