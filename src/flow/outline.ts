import { answersOf } from './edges.ts'
import type { Flow, Part, Question } from './grammar.ts'

/** The sentence of a key, as a page would say it. */
export type Wording = (key: string) => string

/** One way on from a question: under which guard, and where to. `end` is the end of the part. */
export interface Way {
  readonly guard: string
  readonly to: string
}

/** One question as both drawings show it. */
export interface Entry {
  readonly id: string
  readonly kind: string
  readonly ask: string | null
  /** The rule while which it is asked. */
  readonly when: string | null
  readonly options: readonly string[]
  readonly bounds: string | null
  readonly optional: boolean
  readonly ways: readonly Way[]
  readonly readBy: readonly string[]
}

export interface Outline {
  readonly id: string
  readonly repeated: string | null
  readonly entries: readonly Entry[]
}

export const outline = (flow: Flow, say?: Wording): Outline[] =>
  flow.parts.map((part) => ({
    id: part.id,
    repeated: part.repeat ? `for each item${part.most ? `, ${part.most} at most` : ''}` : null,
    entries: part.questions.map((question, at) => entry(part, question, at, say)),
  }))

function entry(part: Part, question: Question, at: number, say?: Wording): Entry {
  const next = part.questions[at + 1]?.id ?? 'end'
  return {
    id: question.id,
    kind: question.kind,
    ask: say ? say(`${question.id}.ask`) : null,
    when: question.when?.rule ?? null,
    options: (question.options ?? []).map((option) =>
      typeof option === 'string' ? option : `${option.option}\u00a0[if\u00a0${option.when.rule}]`,
    ),
    bounds: bounds(question),
    optional: question.optional === true,
    ways: (question.next ?? [{ to: next }]).map((edge, place) => ({
      guard: guard(edge.when, place),
      to: edge.to,
    })),
    readBy: question.read_by,
  }
}

function guard(when: NonNullable<Question['next']>[number]['when'], place: number): string {
  if (!when) return place === 0 ? '' : 'otherwise'
  return 'rule' in when ? `if ${when.rule}` : answersOf(when.answer).join(' | ')
}

function bounds({ kind, min, max, unit, longest, step }: Question): string | null {
  if (kind === 'number') return `${min} to ${max} ${unit}${step ? ` in steps of ${step}` : ''}`
  if (kind === 'photo' || kind === 'spots') return `${max} at most`
  return longest ? `${longest} characters at most` : null
}
