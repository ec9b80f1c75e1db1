import { matches } from '../flow/cells.ts'
import type { Finding } from '../flow/finding.ts'
import type { Table } from '../flow/table-grammar.ts'
import type { Because, CounterExample } from '../garment/counter-example.ts'
import { readStatements } from '../garment/must-hold.ts'
import { broken, withoutLimit } from '../garment/prove.ts'
import type { TableSet } from '../garment/space.ts'
import type { FlowsFolder } from './flows-folder.ts'
import { learn } from './knowledge.ts'

/** Where each row of each table stands: file and line, by table and row. */
function placesOf(folder: FlowsFolder, tables: readonly Table[]) {
  const sources = new Map(
    folder.tables.map((source) => [(source.value as Table).table, source] as const),
  )
  return (name: string, row: string): string => {
    const source = sources.get(name)!
    const at = tables.find(({ table }) => table === name)!.rows.findIndex(({ id }) => id === row)
    return `${source.file}:${source.lineOf(['rows', at])}`
  }
}

type PlaceOf = ReturnType<typeof placesOf>

const placed = (because: Because, placeOf: PlaceOf) =>
  Object.fromEntries(
    Object.entries(because).map(([table, links]) => [
      table,
      links.map((link) => ({ at: placeOf(table, link.row), ...link })),
    ]),
  )

/** The example with the file and line of every row that it names. */
const exampleWithPlaces = (example: CounterExample, placeOf: PlaceOf) => ({
  ...example,
  because: placed(example.because, placeOf),
  ...('before' in example && {
    before: { ...example.before, because: placed(example.before.because, placeOf) },
  }),
})

// Rows of limits are collected, so its own proof allows gaps; a garment without any limit has no ceiling.
const gapInLimits = (folder: FlowsFolder, facts: object): Finding => ({
  file: folder.tables.find(({ value }) => (value as Table).table === 'limits')!.file,
  line: 1,
  rule: 'gap',
  message: 'limits: no row sets how hot the iron may be',
  example: { facts },
})

/** The statements that fail somewhere in the whole space of facts, each with its smallest example. */
export function statementFindings(folder: FlowsFolder, tables: readonly Table[], today: string) {
  const statements = readStatements(folder.mustHold.value)
  const { grading } = learn(folder, today)
  const set = { tables, matches: matches as TableSet['matches'] }
  const bare = withoutLimit(set)
  if (bare) return { findings: [gapInLimits(folder, bare)], statements: statements.length }
  const placeOf = placesOf(folder, tables)
  const findings = broken(statements, set, grading).map(
    ({ id, says, example }): Finding => ({
      file: folder.mustHold.file,
      line: folder.mustHold.lineOf([statements.findIndex((one) => one.id === id)]),
      rule: id,
      message: `does not hold: ${says}`,
      example: exampleWithPlaces(example, placeOf),
    }),
  )
  return { findings, statements: statements.length }
}
