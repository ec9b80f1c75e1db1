import { Failure } from '../base/failures.ts'
import { checkFlow } from '../flow/check.ts'
import { checkTable } from '../flow/check-table.ts'
import { type Finding, finding, Unreadable } from '../flow/finding.ts'
import { longestPath } from '../flow/longest.ts'
import { proveTable } from '../flow/prove.ts'
import { readFlow, readTable } from '../flow/read.ts'
import type { Source } from '../flow/source.ts'
import type { Table } from '../flow/table-grammar.ts'
import { columns } from '../garment/facts.ts'
import { wrongOutputs } from '../garment/table-outputs.ts'
import { wordKeys } from '../quilt/word-keys.ts'
import { missingWords } from '../words/words.ts'
import { sourceFindings } from './examine-sources.ts'
import { statementFindings } from './examine-statements.ts'
import { flowWords } from './flow-words.ts'
import type { FlowsFolder } from './flows-folder.ts'
import { layoutsOf, ratesOf, wordsOf } from './knowledge.ts'
import { readers } from './readers.ts'
import { rules } from './rules.ts'

export interface Examined {
  readonly findings: readonly Finding[]
  readonly counts: {
    readonly flows: number
    readonly questions: number
    readonly longestPath: number
    readonly tables: number
    readonly rows: number
    /** Statements that were proven over the whole space of facts. */
    readonly statements: number
    /** Distinct combinations of facts that the tables were proven over. */
    readonly combinations: number
  }
}

/** No garment is asked more than this; optional questions are not counted. */
export const mostQuestions = 14

/** What a source's reading finds wrong; its value where it can be read. */
function tried<T>(read: () => T): { value: T | null; findings: readonly Finding[] } {
  try {
    return { value: read(), findings: [] }
  } catch (error) {
    if (error instanceof Unreadable) return { value: null, findings: error.findings }
    throw error
  }
}

const keysUnder = (words: ReadonlyMap<string, string>, prefix: string) => ({
  has: (key: string) => words.has(prefix + key),
})

const namesUnder = (words: ReadonlyMap<string, string>, prefix: string): string[] =>
  [...words.keys()].filter((key) => key.startsWith(prefix)).map((key) => key.slice(prefix.length))

function examineFlow(folder: FlowsFolder, drawings: Iterable<string>, proving: boolean) {
  const source = folder.flow
  const { value: flow, findings } = tried(() => readFlow(source.value, source))
  if (!flow) return { findings, questions: 0, longest: 0 }
  const words = wordsOf(folder)
  const wrong = checkFlow(flow, {
    rules,
    readers: Object.keys(readers),
    words: new Map([...words].map(([code, all]) => [code, keysUnder(all, 'intake.')])),
    drawings,
    cautions: namesUnder([...words.values()][0] ?? new Map(), 'cautions.'),
    where: source,
  })
  const unsaid = [...words].flatMap(([code, all]) =>
    flowWords(flow)
      .filter((key) => !all.has(`intake.${key}`))
      .map((key) => finding(`intake/words/${code}.yaml`, 'missing-words', `no words for ${key}`)),
  )
  const questions = flow.parts.reduce((sum, part) => sum + part.questions.length, 0)
  if (wrong.length + unsaid.length > 0) {
    return { findings: [...wrong, ...unsaid], questions, longest: 0 }
  }
  const repeated = flow.parts.find(({ repeat }) => repeat)
  const longest = repeated && proving ? longestPath(flow, repeated, rules) : null
  const tooLong: Finding[] =
    longest && longest.count > mostQuestions
      ? [
          {
            file: source.file,
            line: 1,
            rule: 'too-long',
            message: `a garment may be asked ${longest.count} questions, at most ${mostQuestions} are allowed`,
            example: longest.example,
          },
        ]
      : []
  return { findings: tooLong, questions, longest: longest?.count ?? 0 }
}

function examineTable(source: Source, proving: boolean) {
  const { value: table, findings } = tried(() => readTable(source.value, source))
  if (!table) return { table, findings, combinations: 0 }
  const wrong = checkTable(table, columns(), source)
  if (wrong.length > 0 || !proving) return { table, findings: wrong, combinations: 0 }
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

/** Layouts and rates are read by their own rooms, which throw at the first thing that is wrong. */
function readFindings(read: () => unknown): Finding[] {
  try {
    read()
    return []
  } catch (error) {
    if (!(error instanceof Failure)) throw error
    const { file, line, why } = error.details
    return [{ file: String(file), line: Number(line), rule: 'grammar', message: String(why) }]
  }
}

/** A layout without a price cannot be estimated, and one that is not offered is never seen. */
function layoutFindings(folder: FlowsFolder): Finding[] {
  const newest = ratesOf(folder).at(-1)
  return layoutsOf(folder)
    .filter(({ id }) => !newest?.labour[id])
    .map(({ id }) => ({
      file: 'rates',
      line: 1,
      rule: 'no-price',
      message: `the layout ${id} has no price under labour`,
    }))
}

const wordFindings = (folder: FlowsFolder): Finding[] =>
  missingWords(wordsOf(folder)).map((missing) => ({
    file: 'words',
    line: 1,
    rule: 'missing-words',
    message: `no words for ${missing}`,
  }))

/**
 * Everything that can be found wrong in the owner's files. `drawings` are the names a flow may use;
 * `proving` also proves the tables, the statements that must hold and the longest path, which takes
 * seconds; `today` (YYYY-MM-DD) chooses the interfacings on sale.
 */
export function examine(
  folder: FlowsFolder,
  drawings: Iterable<string>,
  { proving, today }: { proving: boolean; today: string },
): Examined {
  const flow = examineFlow(folder, drawings, proving)
  const examined = folder.tables.map((source) => examineTable(source, proving))
  const ofFiles = [...readFindings(() => layoutsOf(folder)), ...readFindings(() => ratesOf(folder))]
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
  ]
  const proved =
    proving && ofAll.length === 0
      ? statementFindings(folder, tables, today)
      : { findings: [], statements: 0 }
  return {
    findings: [...ofAll, ...proved.findings],
    counts: {
      flows: 1,
      questions: flow.questions,
      longestPath: flow.longest,
      tables: tables.length,
      rows: tables.reduce((sum, { rows }) => sum + rows.length, 0),
      statements: proved.statements,
      combinations: examined.reduce((sum, { combinations }) => sum + combinations, 0),
    },
  }
}
