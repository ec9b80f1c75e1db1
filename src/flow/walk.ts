import type { Part, Question, Replies, Reply, Rules } from './grammar.ts'
import { holds } from './rules.ts'
import { makesSense } from './sense.ts'

export interface Step {
  readonly question: Question
  readonly reply: Reply
}

/** How far the answers lead through one part. */
export interface Walk {
  readonly path: readonly Step[]
  /** The question that waits for an answer; null when the part is through. */
  readonly open: Question | null
  /** What rules may look at: replies of the path, and those of earlier parts. */
  readonly replies: Replies
  /** Answers off the path or no longer offered. They count again when the path returns to them. */
  readonly aside: Replies
}

export type Answers = ReadonlyMap<string, Reply>

type Edge = NonNullable<Question['next']>[number]

/** Follows answers through a part. `before` holds replies of earlier parts. */
export function walk(part: Part, answers: Answers, before: Replies, rules: Rules): Walk {
  // Without a prototype: no name is there by accident, and filling it took a third of the time.
  const replies: Record<string, Reply> = Object.assign(Object.create(null), before)
  const path: Step[] = []
  let open: Question | null = null
  let at = 0
  while (at < part.questions.length) {
    const question = part.questions[at]!
    if (question.when && !holds(question.when.rule, replies, rules)) {
      at += 1
      continue
    }
    const reply = answers.get(question.id)
    if (!reply || !makesSense(question, reply, replies, rules)) {
      open = question
      break
    }
    path.push({ question, reply })
    replies[question.id] = reply
    at = after(part, at, replies, rules)
  }
  return { path, open, replies, aside: aside(answers, path) }
}

/**
 * The place in the part after an answered question; past its last one at the end. An edge backwards or
 * to nowhere ends the part, so that no flow can lead in a circle; the check refuses such a flow.
 */
function after(part: Part, at: number, replies: Replies, rules: Rules): number {
  const question = part.questions[at]!
  if (!question.next) return at + 1
  const reply = replies[question.id]!
  const edge = question.next.find((one) => leads(one, reply, replies, rules))
  const end = part.questions.length
  if (!edge || edge.to === 'end') return end
  const to = placeOf(part, edge.to)
  return to > at ? to : end
}

function leads({ when }: Edge, reply: Reply, replies: Replies, rules: Rules): boolean {
  if (!when) return true
  if ('rule' in when) return holds(when.rule, replies, rules)
  const chosen = chosenIn(reply)
  return Array.isArray(when.answer)
    ? when.answer.some((answer) => chosen.includes(answer))
    : chosen.includes(when.answer)
}

/** The options a reply names. A question that was passed over or left to a person names none. */
export function chosenIn(reply: Reply): readonly string[] {
  if (!('given' in reply)) return []
  if (typeof reply.given === 'string') return [reply.given]
  return Array.isArray(reply.given) ? reply.given : []
}

const places = new WeakMap<Part, ReadonlyMap<string, number>>()

/** A question's place in its part, or -1. */
function placeOf(part: Part, id: string): number {
  let known = places.get(part)
  if (!known) {
    known = new Map(part.questions.map((question, at) => [question.id, at]))
    places.set(part, known)
  }
  return known.get(id) ?? -1
}

function aside(answers: Answers, path: readonly Step[]): Replies {
  if (answers.size === path.length) return {}
  const taken = new Set(path.map(({ question }) => question.id))
  return Object.fromEntries([...answers].filter(([id]) => !taken.has(id)))
}
