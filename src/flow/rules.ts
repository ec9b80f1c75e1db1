import { Failure } from '../base/failures.ts'
import type { Question, Replies, Rules } from './grammar.ts'

/** Whether the named rule holds. The start refuses a flow that names a rule which is not there. */
export function holds(name: string, replies: Replies, rules: Rules): boolean {
  if (!Object.hasOwn(rules, name)) {
    throw new Failure('flows_invalid', { file: 'flow', line: 1, why: `there is no rule ${name}` })
  }
  return rules[name]!.holds(replies)
}

export type Option = NonNullable<Question['options']>[number]

export const optionName = (option: Option): string =>
  typeof option === 'string' ? option : option.option

export const optionNames = (question: Question): string[] =>
  (question.options ?? []).map(optionName)

/** The options a question offers now, in the flow's order. */
export function offered(question: Question, replies: Replies, rules: Rules): string[] {
  return (question.options ?? [])
    .filter((option) => isOpen(option, replies, rules))
    .map((option) => optionName(option))
}

/** The same as offered(…).includes(name), asking no more rules than that one option names. */
export function isOffered(
  question: Question,
  name: string,
  replies: Replies,
  rules: Rules,
): boolean {
  const option = question.options?.find((one) => optionName(one) === name)
  return option !== undefined && isOpen(option, replies, rules)
}

const isOpen = (option: Option, replies: Replies, rules: Rules): boolean =>
  typeof option === 'string' || holds(option.when.rule, replies, rules)
