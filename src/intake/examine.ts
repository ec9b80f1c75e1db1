import { checkTable } from '../flow/check-table.ts'
import { type Finding, finding } from '../flow/finding.ts'
import { proveTable } from '../flow/prove.ts'
import { readTable } from '../flow/read.ts'
import type { Source } from '../flow/source.ts'
import type { Table } from '../flow/table-grammar.ts'
import { readActs } from '../garment/better-acts.ts'
import { columns } from '../garment/facts.ts'
import { wrongOutputs } from '../garment/table-outputs.ts'
import { wordKeys } from '../quilt/word-keys.ts'
import { missingWords } from '../words/words.ts'
import { betterFindings } from './examine-better.ts'
import { examineFlow } from './examine-flow.ts'
import { readFindings, tried } from './examine-read.ts'
import { sourceFindings } from './examine-sources.ts'
import { statementFindings } from './examine-statements.ts'
import type { FlowsFolder } from './flows-folder.ts'
import { layoutsOf, ratesOf, wordsOf } from './knowledge.ts'
import type { Counts } from './proofs.ts'
import { readShop } from './shop.ts'

export interface Examined {
  readonly findings: readonly Finding[]
  readonly counts: Counts
}

function examineTable(source: Source) {
  const { value: table, findings } = tried(() => readTable(source.value, source))
  if (!table) return { table, findings, combinations: 0 }
  const wrong = checkTable(table, columns(), source)
  if (wrong.length > 0) return { table, findings: wrong, combinations: 0 }
  const proof = proveTable(table, columns(), source)
  return { table, findings: proof.findings, combinations: proof.combinations }
}

/** What grading could trip over, once every table can be read by itself. */
function gradingFindings(folder: FlowsFolder, tables: readonly Table[]): Finding[] {
  const outputs = wrongOutputs(tables).map(({ table, row, message }) =>
    finding(`tables/${table}.yaml`, 'output', row ? `${row}: ${message}` : message),
  )
  const rates = ratesOf(folder).at(-1)
  if (!rates) return outputs
  const keys = wordKeys({ tables, layouts: layoutsOf(folder), rates })
  const unsaid = [...wordsOf(folder)].flatMap(([code, words]) =>
    keys
      .filter((key) => !words.has(`trade.${key}`))
      .map((key) => finding(`tables/words/${code}.yaml`, 'missing-words', `no words for ${key}`)),
  )
  return [...outputs, ...unsaid]
}

/** A layout without a price cannot be estimated, and one that is not offered is never seen. */
function layoutFindings(folder: FlowsFolder): Finding[] {
  const newest = ratesOf(folder).at(-1)
  return layoutsOf(folder)
    .filter(({ id }) => newest?.piecing[id] === undefined)
    .map(({ id }) => finding('rates', 'no-price', `the layout ${id} has no price under piecing`))
}

const wordFindings = (folder: FlowsFolder): Finding[] =>
  missingWords(wordsOf(folder)).map((missing) =>
    finding('words', 'missing-words', `no words for ${missing}`),
  )

/**
 * Everything that can be found wrong in the owner's files: each by itself, all together, and, where
 * nothing else is wrong, the statements that must hold, over the whole space of facts. Takes seconds.
 * `drawings` are the names a flow may use; `today` (YYYY-MM-DD) chooses the interfacings on sale.
 */
export function examine(
  folder: FlowsFolder,
  drawings: Iterable<string>,
  { today }: { today: string },
): Examined {
  const flow = examineFlow(folder, drawings)
  const examined = folder.tables.map(examineTable)
  const ofFiles = [
    ...readFindings(() => readShop(folder.shop.value)),
    ...readFindings(() => readActs(folder.better.value)),
    ...readFindings(() => layoutsOf(folder)),
    ...readFindings(() => ratesOf(folder)),
  ]
  const tables = examined.flatMap(({ table }) => table ?? [])
  const read = ofFiles.length === 0 && examined.every(({ findings }) => findings.length === 0)
  const ofAll = [
    ...flow.findings,
    ...examined.flatMap(({ findings }) => findings),
    ...ofFiles,
    ...wordFindings(folder),
    ...(read
      ? [...layoutFindings(folder), ...gradingFindings(folder, tables), ...sourceFindings(folder)]
      : []),
    ...(read && flow.findings.length === 0 ? betterFindings(folder, tables) : []),
  ]
  const proved =
    ofAll.length === 0 ? statementFindings(folder, tables, today) : { findings: [], statements: 0 }
  return {
    findings: [...ofAll, ...proved.findings],
    counts: {
      flows: 1,
      questions: flow.questions,
      longestPath: flow.longestPath,
      paths: flow.paths,
      tables: tables.length,
      rows: tables.reduce((sum, { rows }) => sum + rows.length, 0),
      statements: proved.statements,
      combinations: examined.reduce((sum, { combinations }) => sum + combinations, 0),
    },
  }
}
