import type { Flow, Question } from '../flow/grammar.ts'
import { optionNames } from '../flow/rules.ts'

const keysOf = (question: Question): string[] => [
  `${question.id}.ask`,
  `${question.id}.short`,
  `${question.id}.why`,
  ...optionNames(question).map((option) => `${question.id}.options.${option}`),
  ...(question.unit ? [`units.${question.unit}`] : []),
]

/** Keys of the sentences that the pages say of a flow's questions, under `intake.`. */
export const flowWords = (flow: Flow): string[] => [
  ...new Set(flow.parts.flatMap(({ questions }) => questions.flatMap(keysOf))),
]
