import { checkNames } from './check-names.ts'
import { checkPaths } from './check-paths.ts'
import { checkShape } from './check-shape.ts'
import { type Finding, nowhere, type Path, type Where } from './finding.ts'
import type { Flow, Part, Question, Rules } from './grammar.ts'

export interface Surroundings {
  readonly rules: Rules
  /** Names that may stand in `read_by`, beside the rules. */
  readonly readers: Iterable<string>
  /** By language: whether a text stands under a key. */
  readonly words: ReadonlyMap<string, { has(key: string): boolean }>
  readonly drawings: Iterable<string>
  readonly cautions: Iterable<string>
  /** Where the flow was read from, so that findings have lines. */
  readonly where?: Where
}

/** A question, where it stands, and how to report on it. */
export interface Spot {
  readonly question: Question
  readonly part: Part
  readonly partAt: number
  readonly at: number
  readonly report: Report
}

/** Notes a finding; `path` leads on from the question. */
export type Report = (rule: string, message: string, path?: Path, example?: string) => void

/**
 * Everything about a flow that can be told without following answers: names that are not there, edges
 * that lead nowhere, questions nobody reaches or reads, words that are missing. Never throws.
 */
export function checkFlow(flow: Flow, around: Surroundings): Finding[] {
  const where = around.where ?? nowhere
  const findings: Finding[] = []
  const note =
    (base: Path, name: string): Report =>
    (rule, message, path = [], example) => {
      const line = where.lineOf([...base, ...path])
      const finding = { file: where.file, line, rule, message: `${name}: ${message}` }
      findings.push(example === undefined ? finding : { ...finding, example })
    }
  const spots = flow.parts.flatMap((part, partAt) =>
    part.questions.map((question, at): Spot => {
      const report = note(['parts', partAt, 'questions', at], question.id)
      return { question, part, partAt, at, report }
    }),
  )
  const partNote = (at: number) => note(['parts', at], flow.parts[at]!.id)
  checkShape(flow, spots, partNote)
  checkNames(flow, spots, around)
  checkPaths(spots)
  return findings
}
