import type { Act, Flow, Kind, Question, Replies, Reply, Rules } from './grammar.ts'
import { type Answers, type Walk, walk } from './walk.ts'

/** A part that is asked once. */
export interface PartWalk extends Walk {
  readonly part: string
}

/** One item of the repeated part, with its number from 1. */
export interface Item extends Walk {
  readonly n: number
  readonly dropped: boolean
}

/** Where the conversation stands. Parts are named by id; `item` is 0 outside the repeated part. */
export type Place =
  | {
      readonly at: 'question'
      readonly part: string
      readonly item: number
      readonly question: Question
    }
  | { readonly at: 'gather'; readonly part: string }
  | { readonly at: 'end' }

export interface Followed {
  /** The parts that are asked once, in the flow's order. */
  readonly parts: readonly PartWalk[]
  /** Items of the repeated part by number, dropped ones too. */
  readonly items: readonly Item[]
  readonly closed: boolean
  readonly place: Place
}

interface Kept {
  readonly once: Map<string, Reply>
  readonly items: Map<number, { readonly answers: Map<string, Reply>; dropped: boolean }>
  closed: boolean
}

/**
 * The state of a conversation, derived from its acts. Never throws for an act: one that makes no sense
 * (an unknown item or question, a copy of nothing) is passed over. Throws `flows_invalid` where the
 * flow names a rule that `rules` lacks. `notCopied`: kinds whose replies a copied item starts without.
 */
export function follow(
  flow: Flow,
  acts: readonly Act[],
  rules: Rules,
  notCopied: readonly Kind[] = ['photo'],
): Followed {
  const kept = keep(flow, acts, notCopied)
  const parts: PartWalk[] = []
  let items: Item[] = []
  let before: Replies = {}
  let gathering = false
  for (const part of flow.parts) {
    if (part === repeatedPart(flow)) {
      items = [...kept.items]
        .sort(([a], [b]) => a - b)
        .map(([n, { answers, dropped }]) => ({
          n,
          dropped,
          ...walk(part, answers, before, rules),
        }))
      gathering = !kept.closed
      continue
    }
    const own = answersOf(part.questions, kept.once)
    const walked = gathering ? notYet(own, before) : walk(part, own, before, rules)
    parts.push({ part: part.id, ...walked })
    before = walked.replies
  }
  return { parts, items, closed: kept.closed, place: placeIn(flow, parts, items, kept.closed) }
}

/** The part that is asked again for each item. A flow has one at most; the check holds it to that. */
export const repeatedPart = (flow: Flow) => flow.parts.find(({ repeat }) => repeat)

export const isComplete = (item: Item): boolean => !item.dropped && item.open === null

/** A part behind one that is still being gathered: nothing in it is open yet. */
const notYet = (answers: Answers, replies: Replies): Walk => ({
  path: [],
  open: null,
  replies,
  aside: Object.fromEntries(answers),
})

function answersOf(questions: readonly Question[], all: Answers): Answers {
  const own = new Map<string, Reply>()
  for (const { id } of questions) {
    const reply = all.get(id)
    if (reply) own.set(id, reply)
  }
  return own
}

/** The latest answer to each question of each item, and which items there are. */
function keep(flow: Flow, acts: readonly Act[], notCopied: readonly Kind[]): Kept {
  const { once, repeated } = questionsOf(flow)
  const kept: Kept = { once: new Map(), items: new Map(), closed: false }
  for (const act of acts) take(act)
  return kept

  function take(act: Act): void {
    switch (act.act) {
      case 'answer': {
        if (act.item === 0) {
          if (once.has(act.question)) kept.once.set(act.question, act.reply)
          return
        }
        if (repeated.has(act.question)) {
          kept.items.get(act.item)?.answers.set(act.question, act.reply)
        }
        return
      }
      case 'add':
        begin(act.item, new Map())
        return
      case 'copy': {
        const from = kept.items.get(act.from)
        if (from) begin(act.item, copyOf(from.answers))
        return
      }
      case 'drop':
      case 'restore': {
        const item = kept.items.get(act.item)
        if (item) item.dropped = act.act === 'drop'
        return
      }
      case 'close':
        kept.closed = true
    }
  }

  function begin(n: number, answers: Map<string, Reply>): void {
    const isNew = repeated.size > 0 && Number.isInteger(n) && n > 0 && !kept.items.has(n)
    if (isNew) kept.items.set(n, { answers, dropped: false })
  }

  function copyOf(answers: Answers): Map<string, Reply> {
    return new Map([...answers].filter(([id]) => !notCopied.includes(repeated.get(id)!.kind)))
  }
}

interface Questions {
  readonly once: ReadonlyMap<string, Question>
  readonly repeated: ReadonlyMap<string, Question>
}

const known = new WeakMap<Flow, Questions>()

/** The questions of a flow by id: those asked once, and those of the repeated part. */
export function questionsOf(flow: Flow): Questions {
  const before = known.get(flow)
  if (before) return before
  const repeats = repeatedPart(flow)
  const byId = (parts: Flow['parts']) =>
    new Map(parts.flatMap(({ questions }) => questions.map((one) => [one.id, one] as const)))
  const questions = {
    once: byId(flow.parts.filter((part) => part !== repeats)),
    repeated: byId(repeats ? [repeats] : []),
  }
  known.set(flow, questions)
  return questions
}

/** Earlier parts first; then items that are begun, more items, and what comes after them. */
function placeIn(
  flow: Flow,
  parts: readonly PartWalk[],
  items: readonly Item[],
  closed: boolean,
): Place {
  for (const part of flow.parts) {
    if (part !== repeatedPart(flow)) {
      const open = parts.find((one) => one.part === part.id)?.open
      if (open) return { at: 'question', part: part.id, item: 0, question: open }
      continue
    }
    const begun = items.find((item) => !item.dropped && item.open !== null)
    if (begun) return { at: 'question', part: part.id, item: begun.n, question: begun.open! }
    if (!closed || !items.some(isComplete)) return { at: 'gather', part: part.id }
  }
  return { at: 'end' }
}
