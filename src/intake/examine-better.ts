import { type Finding, finding } from '../flow/finding.ts'
import type { Flow } from '../flow/grammar.ts'
import { readFlow } from '../flow/read.ts'
import type { Table } from '../flow/table-grammar.ts'
import { type Act, readActs } from '../garment/better-acts.ts'
import { betterKeys } from '../garment/better-keys.ts'
import type { FlowsFolder } from './flows-folder.ts'
import { wordsOf } from './knowledge.ts'

const file = 'better.yaml'

function unknownNames(acts: readonly Act[], flow: Flow, tables: readonly Table[]): Finding[] {
  const questions = flow.parts.flatMap((part) => part.questions.map(({ id }) => id))
  const flags = tables.find(({ table }) => table === 'flags')?.rows.map(({ id }) => id) ?? []
  return acts.flatMap(({ act, by, question, answers }) => [
    ...(question === null && by === 'customer'
      ? [finding(file, 'no-question', `${act}: a customer is led to no question`)]
      : []),
    ...(question === null || questions.includes(question)
      ? []
      : [finding(file, 'unknown-question', `${act}: there is no question ${question}`)]),
    ...answers
      .filter((code) => !flags.includes(code))
      .map((code) => finding(file, 'unknown-flag', `${act}: there is no reason ${code}`)),
  ])
}

/**
 * What is wrong with the acts that may better a garment: a question or reason that is not there, a
 * sentence that a language lacks. Their facts are checked as they are read; throws `flows_invalid`.
 */
export function betterFindings(folder: FlowsFolder, tables: readonly Table[]): Finding[] {
  const acts = readActs(folder.better.value)
  const flow = readFlow(folder.flow.value, folder.flow)
  const keys = betterKeys(acts)
  const unsaid = [...wordsOf(folder)].flatMap(([code, words]) =>
    keys
      .filter((key) => !words.has(`trade.${key}`))
      .map((key) => finding(`tables/words/${code}.yaml`, 'missing-words', `no words for ${key}`)),
  )
  return [...unknownNames(acts, flow, tables), ...unsaid]
}
