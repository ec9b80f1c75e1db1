import { canonical, sha256 } from '../base/ids.ts'
import type { Flow, Question } from './grammar.ts'

/** Names a version of a flow by its content: comments, key order and line breaks do not matter. */
export const flowHash = (flow: Flow): string => sha256(canonical(flow))

/** The rules a flow needs, each once, by name. */
export function rulesNamed(flow: Flow): string[] {
  const named = flow.parts.flatMap(({ questions }) => questions.flatMap(rulesOf))
  return [...new Set(named.map(({ rule }) => rule))].sort()
}

export interface Naming {
  readonly rule: string
  /** Where in the question it stands. */
  readonly path: readonly (string | number)[]
  /** An edge is chosen when the question has its reply; the others before it is asked. */
  readonly sees: 'before' | 'after'
}

/** Every place in a question that names a rule. */
export function rulesOf(question: Question): Naming[] {
  const asked: Naming[] = question.when
    ? [{ rule: question.when.rule, path: ['when', 'rule'], sees: 'before' }]
    : []
  const options = (question.options ?? []).flatMap((option, at): Naming[] =>
    typeof option === 'string'
      ? []
      : [{ rule: option.when.rule, path: ['options', at, 'when', 'rule'], sees: 'before' }],
  )
  const edges = (question.next ?? []).flatMap(({ when }, at): Naming[] =>
    when && 'rule' in when
      ? [{ rule: when.rule, path: ['next', at, 'when', 'rule'], sees: 'after' }]
      : [],
  )
  return [...asked, ...options, ...edges]
}
