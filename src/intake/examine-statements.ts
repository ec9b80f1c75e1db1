import { matches } from '../flow/cells.ts'
import { finding } from '../flow/finding.ts'
import type { Table } from '../flow/table-grammar.ts'
import { readStatements } from '../garment/must-hold.ts'
import { broken } from '../garment/prove.ts'
import type { TableSet } from '../garment/space.ts'
import type { FlowsFolder } from './flows-folder.ts'
import { learn } from './knowledge.ts'

/** The statements that fail somewhere in the whole space of facts, each with an example. */
export function statementFindings(folder: FlowsFolder, tables: readonly Table[], today: string) {
  const statements = readStatements(folder.mustHold.value)
  const { grading } = learn(folder, today)
  const set = { tables, matches: matches as TableSet['matches'] }
  const findings = broken(statements, set, grading).map(({ id, says, example }) =>
    finding('tables/must-hold.yaml', id, `does not hold: ${says}`, JSON.stringify(example)),
  )
  return { findings, statements: statements.length }
}
