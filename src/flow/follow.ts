import { type Followed, type Item, isComplete, type PartWalk, type Place } from './followed.ts'
import type { Act, Flow, Kind, Question, Replies, Reply, Rules } from './grammar.ts'
import { keep, repeatedPart } from './kept.ts'
import { type Answers, type Walk, walk } from './walk.ts'

export { admit } from './admit.ts'
export type { Followed, Item, PartWalk, Place } from './followed.ts'

/**
 * The state of a conversation, derived from its acts. Never throws for an act: one that makes no sense
 * (an unknown item or question, a copy of nothing) is passed over. Throws `flows_invalid` where the
 * flow names a rule that `rules` lacks. `notCopied`: kinds whose replies a copied item starts without.
 */
export function follow(
  flow: Flow,
  acts: readonly Act[],
  rules: Rules,
  notCopied: readonly Kind[] = ['photo', 'spots'],
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
