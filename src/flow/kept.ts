import type { Act, Flow, Kind, Question, Reply } from './grammar.ts'
import type { Answers } from './walk.ts'

/** What acts leave behind: the latest answer to each question, and which items there are. */
export interface Kept {
  readonly once: Map<string, Reply>
  readonly items: Map<number, { readonly answers: Map<string, Reply>; dropped: boolean }>
  closed: boolean
}

/** The part that is asked again for each item. A flow has one at most; the check holds it to that. */
export const repeatedPart = (flow: Flow) => flow.parts.find(({ repeat }) => repeat)

/** Acts in order; one that makes no sense is passed over. A copy starts without `notCopied` kinds. */
export function keep(flow: Flow, acts: readonly Act[], notCopied: readonly Kind[]): Kept {
  const kept: Kept = { once: new Map(), items: new Map(), closed: false }
  for (const act of acts) take(flow, kept, act, notCopied)
  return kept
}

/** The same with one act more; `kept` stays as it was, and what the act does not touch is shared. */
export function keepOn(flow: Flow, kept: Kept, act: Act, notCopied: readonly Kind[]): Kept {
  const items = new Map(kept.items)
  const touched = 'item' in act ? items.get(act.item) : undefined
  if (touched && 'item' in act) {
    items.set(act.item, { answers: new Map(touched.answers), dropped: touched.dropped })
  }
  const isOfPile = act.act === 'answer' && act.item === 0
  const next: Kept = {
    once: isOfPile ? new Map(kept.once) : kept.once,
    items,
    closed: kept.closed,
  }
  take(flow, next, act, notCopied)
  return next
}

function take(flow: Flow, kept: Kept, act: Act, notCopied: readonly Kind[]): void {
  const { repeated } = questionsOf(flow)
  switch (act.act) {
    case 'answer': {
      if (act.item === 0) {
        kept.once.set(act.question, act.reply)
        return
      }
      if (repeated.has(act.question)) {
        kept.items.get(act.item)?.answers.set(act.question, act.reply)
      }
      return
    }
    case 'add':
      begin(act.item, () => new Map())
      return
    case 'copy': {
      const from = kept.items.get(act.from)
      if (from) begin(act.item, () => copyOf(from.answers))
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

  function begin(n: number, answers: () => Map<string, Reply>): void {
    const isNew = repeated.size > 0 && Number.isInteger(n) && n > 0 && !kept.items.has(n)
    if (isNew) kept.items.set(n, { answers: answers(), dropped: false })
  }

  function copyOf(answers: Answers): Map<string, Reply> {
    return new Map(
      [...answers]
        .filter(([id]) => !notCopied.includes(repeated.get(id)!.kind))
        .map(([id, reply]) => [id, withoutPhoto(reply)]),
    )
  }
}

/** A label's words are copied, and a doubt about them; its photo stays with the garment that it was taken of. */
function withoutPhoto(reply: Reply): Reply {
  if ('asked' in reply) return { asked: reply.asked }
  if (!('given' in reply) || typeof reply.given !== 'object' || !('found' in reply.given)) {
    return reply
  }
  const { photo: _, read: __, ...label } = reply.given
  return { given: label }
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
