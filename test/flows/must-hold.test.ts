import { describe, expect, test } from 'vitest'
import { matches } from '../../src/flow/cells.ts'
import type { Table } from '../../src/flow/table-grammar.ts'
import { domains, type Facts, pileDomains } from '../../src/garment/facts.ts'
import { grade, grades } from '../../src/garment/grade.ts'
import type { Knowledge } from '../../src/garment/knowledge.ts'
import {
  type Conditions,
  keeps,
  readStatements,
  type Statement,
} from '../../src/garment/must-hold.ts'
import { ordinary } from '../../src/garment/ordinary.ts'
import { methods } from '../../src/garment/press.ts'
import { type Broken, broken } from '../../src/garment/prove.ts'
import type { TableSet } from '../../src/garment/space.ts'
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

/** The row of limits that reads a value of a fact. */
function rowSetting(fact: string, value: string): string {
  const limits = tables.find(({ table }) => table === 'limits')!
  return limits.rows.find(({ when }) => when[fact] && matches(when[fact], value))!.id
}

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
    ['limits', rowSetting('printMake', 'screen'), { limitC: 150 }],
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
  ['worse-is-never-hotter', ['limits', rowSetting('printMake', 'screen'), { limitC: 100 }]],
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

type Example = Broken['example']

const isSo = (conditions: Conditions, facts: Record<string, unknown>): boolean =>
  Object.entries(conditions).every(([name, values]) => values.includes(String(facts[name])))

/** Whether real gradings of the garment, and of the worse one of a scale, keep the statement. */
function keepsAll(one: Statement, example: Example, known: Knowledge): boolean {
  const garment = { ...ordinary, ...example.facts }
  const graded = (facts: object) => {
    const all = { ...garment, ...facts }
    return grade(all as unknown as Facts, { recipient: all.recipient as 'adult' }, known)
  }
  if ('holds' in one) {
    return one.holds
      .filter(({ when }) => when.some((conditions) => isSo(conditions, garment)))
      .every((claim) => keeps(claim, graded({}), known))
  }
  if (!('step' in example)) throw new Error(`${one.id} is told without its step`)
  const { fact, better, worse } = example.step
  const [before, after] = [graded({ [fact]: better }), graded({ [fact]: worse })]
  return {
    'raises-ceiling': (after.press.ceilingC ?? 0) <= (before.press.ceilingC ?? 0),
    'nearer-fusing': methods.indexOf(after.press.method) <= methods.indexOf(before.press.method),
    'betters-grade': grades.indexOf(after.grade) >= grades.indexOf(before.grade),
  }[example.never]
}

const cases = breaking.map(([id, ...changes]) => ({
  id,
  changes,
  rows: changes.map(([table, row]) => `${row} of ${table}`).join(' and '),
}))

/** The one example against a statement over changed tables. */
function failing(id: string, changes: readonly Change[]) {
  const some = changed(changes)
  const known = { ...knowledge, decide: decideFrom(some) }
  const found = broken([byId.get(id)!], setOf(some), known)
  expect(found.map((each) => each.id)).toEqual([id])
  return { example: found[0]!.example, says: found[0]!.says, known }
}

const bothOf = (list: readonly string[]) =>
  list.flatMap((a, at) => list.slice(at + 1).map((b) => [a, b] as const))

const othersThan = (fact: string) =>
  [...(ordinaryDomains[fact] ?? [])].filter((value) => value !== ordinary[fact])

const ordinaryDomains: Readonly<Record<string, readonly string[]>> = { ...domains, ...pileDomains }

/** Every garment that departs from the ordinary one in one fact, and in two. */
const departingInOne = Object.keys(ordinaryDomains).flatMap((fact) =>
  othersThan(fact).map((value) => ({ [fact]: value })),
)
const departingInTwo = bothOf(Object.keys(ordinaryDomains)).flatMap(([a, b]) =>
  othersThan(a).flatMap((one) => othersThan(b).map((two) => ({ [a]: one, [b]: two }))),
)

describe.each(cases)('$id, when $rows is changed,', ({ id, changes }) => {
  const one = byId.get(id)!

  test('is seen to fail, with facts at which a grading breaks it', () => {
    const { example, says, known } = failing(id, changes)
    expect(says).toBe(one.says)
    expect(keepsAll(one, example, known)).toBe(false)
  })

  test('has no smaller example: with fewer facts out of the ordinary every grading keeps it', () => {
    const { example, known } = failing(id, changes)
    for (const fact of Object.keys(example.facts)) {
      const { [fact]: _, ...fewer } = example.facts
      expect(keepsAll(one, { ...example, facts: fewer }, known), `without ${fact}`).toBe(true)
    }
    const size = Object.keys(example.facts).length
    const smaller = [
      ...(size > 0 ? [{}] : []),
      ...(size > 1 ? departingInOne : []),
      ...(size > 2 ? departingInTwo : []),
    ]
    const failed = smaller.filter((facts) => !keepsAll(one, { ...example, facts }, known))
    expect(failed).toEqual([])
  })
})

describe('a counter-example', () => {
  const screenCap = rowSetting('printMake', 'screen')

  test('names the fact, the demand, what came out, and the row that set the ceiling', () => {
    const { example } = failing('lowest-limit-rules', [['limits', screenCap, { limitC: 150 }]])
    expect(example).toMatchObject({
      facts: { printMake: 'screen' },
      must: { most_c: 125 },
      cameOut: 150,
    })
    const setting = example.because.limits!.filter(({ setsCeiling }) => setsCeiling)
    expect(setting.map(({ row }) => row)).toEqual([screenCap])
  })

  test('tells for a scale the step, and what came out before it and after', () => {
    const { example } = failing('worse-is-never-hotter', [['limits', screenCap, { limitC: 100 }]])
    expect(example).toMatchObject({
      facts: {},
      never: 'raises-ceiling',
      step: { fact: 'printMake', better: 'screen', worse: 'film' },
      cameOut: { better: { ceilingC: 100 }, worse: { ceilingC: 110 } },
    })
  })

  test('weighs each interfacing, sole and spare, where fusing is what went wrong', () => {
    const { example } = failing('cool-fuse-is-tested', [
      ['permit', 'test-failed', { most: 'fuse-cool' }],
    ])
    const cool = example.interfacings!.find(({ method }) => method === 'fuse-cool')!
    const used = knowledge.interfacings.find((it) => it.class === cool.class)!
    expect(cool).toMatchObject({ needsC: used.soleC + 10, coolEnough: true, chosen: true })
    expect(example.because.permit!.map(({ row }) => row)).toEqual(['test-failed'])
  })

  test('shows that no row spoke where a row is missing', () => {
    const { example } = failing('untold-is-never-sound', [['flags', 'consent-unknown', null]])
    expect(example).toMatchObject({ facts: { consent: 'unknown' }, because: { flags: [] } })
  })

  test('is the same each time', () => {
    const change: Change = ['testing', 'not-washed', { testFirst: false }]
    expect(failing('washing-is-respected', [change]).example).toEqual(
      failing('washing-is-respected', [change]).example,
    )
  })
})

test('nothing is said against the ordinary garment that examples are told against', () => {
  const grading = grade(ordinary as unknown as Facts, { recipient: 'adult' }, knowledge)
  expect(grading).toMatchObject({ grade: 'sound', flags: [] })
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
