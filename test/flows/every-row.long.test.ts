import { expect, test } from 'vitest'
import { nowhere } from '../../src/flow/finding.ts'
import { proveTable } from '../../src/flow/prove.ts'
import { columns, hottestC } from '../../src/garment/facts.ts'
import { type Severity, severities } from '../../src/garment/grade.ts'
import type { Outcome, Statement } from '../../src/garment/must-hold.ts'
import { wrongOutputs } from '../../src/garment/table-outputs.ts'
import { brokenBy, type Change, changed, rowsOf, statements } from '../help/changed-tables.ts'

type Row = ReturnType<typeof rowsOf>[number]

interface Mutation {
  readonly what: string
  readonly change: Change
}

const caps = [...new Set(rowsOf('limits').map(({ give }) => give.limitC as number | null))]
const ladder = [...caps.toSorted((a, b) => (a ?? 0) - (b ?? 0)), hottestC + 10]

const hotter = ({ give }: Row) => ({ limitC: ladder[ladder.indexOf(give.limitC as number) + 1] })

const milder = ({ give }: Row) => ({
  severity: severities[severities.indexOf(give.severity as Severity) - 1],
})

/** The row without one of the values of a cell that lists several. */
const forgetting = (table: string, { id, when }: Row): Mutation[] =>
  Object.entries(when).flatMap(([column, cell]) =>
    Array.isArray(cell) && cell.length > 1
      ? cell.map((value) => ({
          what: `${id} forgets ${column} ${value}`,
          change: [
            table,
            id,
            { when: { ...when, [column]: cell.filter((one) => one !== value) } },
          ] as const,
        }))
      : [],
  )

const mutationsOf = (table: string, row: Row, worse: [what: string, give: object]): Mutation[] => [
  { what: `${row.id} is taken out`, change: [table, row.id, null] },
  { what: `${row.id} is ${worse[0]}`, change: [table, row.id, { give: worse[1] }] },
  ...forgetting(table, row),
]

const ofLimits = rowsOf('limits').flatMap((row) =>
  mutationsOf('limits', row, ['one step hotter', hotter(row)]),
)

const ofFlags = rowsOf('flags')
  .filter(({ give }) => give.severity === 'eyes' || give.severity === 'home')
  .flatMap((row) => mutationsOf('flags', row, ['one step milder', milder(row)]))

/** Statements with only the demands that a table may break. */
function about(isMeant: (key: string) => boolean, unwanted: readonly string[]): Statement[] {
  return statements.flatMap((one): Statement[] => {
    if ('worse' in one) return one.never.some((it) => unwanted.includes(it)) ? [one] : []
    const holds = one.holds
      .map((claim) => {
        const demands = Object.entries(claim.must).filter(([key]) => isMeant(key))
        return { ...claim, must: Object.fromEntries(demands) as Outcome }
      })
      .filter(({ must }) => Object.keys(must).length > 0)
    return holds.length > 0 ? [{ ...one, holds }] : []
  })
}

const ofGrade = ['grade', 'flag', 'no_flag', 'reasons']
const aboutFlags = about((key) => ofGrade.includes(key), ['betters-grade'])
const aboutLimits = about(
  (key) => !ofGrade.includes(key) && key !== 'unfit',
  ['raises-ceiling', 'nearer-fusing'],
)

/** The statements that speak of the same facts first: they catch soonest. */
const nearestFirst = (some: readonly Statement[], facts: readonly string[]): Statement[] => {
  const mentions = (one: Statement): boolean =>
    'worse' in one
      ? false
      : one.holds.some(({ when }) => when.some((each) => facts.some((fact) => fact in each)))
  return some.toSorted((a, b) => Number(mentions(b)) - Number(mentions(a)))
}

/** The name of what catches a change: a table's own proof, or a statement; null where nothing does. */
function caughtBy(change: Change, some: readonly Statement[]): string | null {
  const [name, id] = change
  const now = changed([change])
  const table = now.find((one) => one.table === name)!
  const [wrong] = wrongOutputs(now)
  if (wrong) return `${wrong.table} output ${wrong.row}`
  const [gap] = proveTable(table, columns(), nowhere).findings
  if (gap) return `${name} ${gap.rule}`
  const facts = Object.keys(rowsOf(name).find((row) => row.id === id)!.when)
  for (const one of nearestFirst(some, facts)) {
    const [found] = brokenBy([change], [one])
    if (found) return found.id
  }
  return null
}

const noneHotter = 'nothing hotter follows: every label and fibre but this one still sets its limit'
const byOwner = 'a figure of the shop: no rule of the trade names a heat for old cloth'
const saidTwice =
  'the garment stays home all the same: mould and chemicals have two rows of that gravity'
const neverSound =
  'the trade asks that it is never sound; whether a person looks first is for the shop'

/** What no statement stands against, and why none should. */
const allowed: Readonly<Record<string, string>> = {
  'label-hot is taken out': noneHotter,
  'fibre-hot is taken out': noneHotter,
  'print-screen is one step hotter':
    'a shop that tried its prints may go to 125 °C, as its row says',
  'age-old is taken out': byOwner,
  'age-old is one step hotter': byOwner,
  'mould is one step milder': saidTwice,
  'chemical is one step milder': saidTwice,
  'do-not-post is one step milder': saidTwice,
  'graphic-too-large is one step milder': neverSound,
  'no-cloth is one step milder': neverSound,
}

const all = [
  ...ofLimits.map((one) => ({ ...one, some: aboutLimits })),
  ...ofFlags.map((one) => ({ ...one, some: aboutFlags })),
]

test.each(all.filter(({ what }) => !allowed[what]))('$what: it is caught by name', (one) => {
  expect(caughtBy(one.change, one.some)).toMatch(/^[a-z-]+( [a-z-]+)*$/)
})

test.each(Object.entries(allowed))('%s: nothing stands against it, for %s', (what) => {
  const one = all.find((each) => each.what === what)
  expect(one, 'a change that is made').toBeDefined()
  expect(caughtBy(one!.change, one!.some)).toBeNull()
})
