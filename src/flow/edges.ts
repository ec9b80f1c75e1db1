import type { Part, Question } from './grammar.ts'
import { optionNames } from './rules.ts'
import { mayBeEmpty } from './sense.ts'

/** A way to meet a question, and the options by which its answer edges may know it. */
export interface Meeting {
  /** In words, for an example: `small`, `(skipped)`. */
  readonly label: string
  readonly names: readonly string[]
}

const withOptions: readonly Question['kind'][] = ['choice', 'confirm', 'many', 'symbols']

/**
 * All ways to meet a question that its edges can tell apart. Of several options ticked at once the edge
 * taken is that of one of them alone, so single options stand for every set.
 */
export function meetings(question: Question): Meeting[] {
  const one = (name: string): Meeting => ({ label: name, names: [name] })
  const none = (label: string): Meeting => ({ label, names: [] })
  const given = withOptions.includes(question.kind)
    ? optionNames(question).map(one)
    : [none('(an answer)')]
  if (question.kind === 'many' && mayBeEmpty(question)) given.push(none('(nothing ticked)'))
  if (question.optional) given.push(none('(skipped)'))
  return [...given, none('(left to a person)')]
}

export interface Leading {
  /** Places of the edges that some answer takes when rules may hold or not. */
  readonly taken: ReadonlySet<number>
  /** Ways to meet the question that may find no edge. */
  readonly stuck: readonly Meeting[]
}

/** Where a question can lead: edges and answers exactly, rules free. */
export function leading(question: Question): Leading {
  const taken = new Set<number>()
  const stuck = meetings(question).filter((meeting) => !passes(question, meeting, taken))
  return { taken, stuck }
}

function passes(question: Question, { names }: Meeting, taken: Set<number>): boolean {
  if (!question.next) return true
  const tried = new Set<string>()
  for (const [at, { when }] of question.next.entries()) {
    if (when && 'rule' in when) {
      // The same rule again would have been taken the first time.
      if (!tried.has(when.rule)) taken.add(at)
      tried.add(when.rule)
      continue
    }
    if (when && !answersOf(when.answer).some((answer) => names.includes(answer))) continue
    taken.add(at)
    return true
  }
  return false
}

export const answersOf = (answer: string | string[]): readonly string[] =>
  typeof answer === 'string' ? [answer] : answer

/** Places in the part that some path comes to; a question with `when` may be passed by. */
export function reached(part: Part): Set<number> {
  const places = new Map(part.questions.map(({ id }, at) => [id, at]))
  const found = new Set([0])
  for (const [at, question] of part.questions.entries()) {
    if (!found.has(at)) continue
    if (question.when || !question.next) found.add(at + 1)
    for (const edge of leading(question).taken) {
      const to = places.get(question.next![edge]!.to)
      if (to !== undefined && to > at) found.add(to)
    }
  }
  return found
}
