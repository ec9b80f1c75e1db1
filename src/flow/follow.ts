import { type Followed, type Item, isComplete, type PartWalk, type Place } from './followed.ts'
import type { Act, Flow, Kind, Question, Replies, Reply, Rules } from './grammar.ts'
import { type Kept, keep, keepOn, repeatedPart } from './kept.ts'
import { type Answers, type Walk, walk } from './walk.ts'

export { admit } from './admit.ts'
export type { Followed, Item, PartWalk, Place } from './followed.ts'

/** Kinds of questions whose replies a copied item starts without. */
const never: readonly Kind[] = ['photo', 'spots']

/** A state with what it was made from, so that one act more need not follow all of them again. */
export interface Following {
  readonly followed: Followed
  readonly kept: Kept
  /** Replies of the parts before the repeated one, as its items saw them. */
  readonly around: Replies
}

/**
 * The state of a conversation, derived from its acts. Never throws for an act: one that makes no sense
 * (an unknown item or question, a copy of nothing) is passed over. Throws `flows_invalid` where the
 * flow names a rule that `rules` lacks. `notCopied`: kinds whose replies a copied item starts without.
 */
export const follow = (
  flow: Flow,
  acts: readonly Act[],
  rules: Rules,
  notCopied: readonly Kind[] = never,
): Followed => following(flow, acts, rules, notCopied).followed

/** The same, ready to be followed on. */
export const following = (
  flow: Flow,
  acts: readonly Act[],
  rules: Rules,
  notCopied: readonly Kind[] = never,
): Following => stand(flow, keep(flow, acts, notCopied), rules, null)

/**
 * What following gives with one act more: the same as following all acts anew. `before` stays as it was.
 * Items that the act leaves as they were are the same objects.
 */
export function followOn(
  flow: Flow,
  before: Following,
  act: Act,
  rules: Rules,
  notCopied: readonly Kind[] = never,
): Following {
  const touched = 'item' in act ? act.item : 0
  return stand(flow, keepOn(flow, before.kept, act, notCopied), rules, { before, touched })
}

/** `earlier`: what stood before one act, and the item that the act is about. */
function stand(
  flow: Flow,
  kept: Kept,
  rules: Rules,
  earlier: { readonly before: Following; readonly touched: number } | null,
): Following {
  const { kept: keptBefore, followed: stood } = earlier?.before ?? {}
  const alike = stood && keptBefore?.once === kept.once && keptBefore.closed === kept.closed
  const parts: PartWalk[] = []
  let items: readonly Item[] = []
  let around: Replies = {}
  let before: Replies = {}
  let gathering = false
  for (const part of flow.parts) {
    if (part === repeatedPart(flow)) {
      around = before
      const walked = (answers: Answers) => walk(part, answers, around, rules)
      items =
        earlier && isSame(around, earlier.before.around)
          ? itemsOn(kept, earlier.before.followed.items, earlier.touched, walked)
          : itemsOf(kept, walked)
      gathering = !kept.closed
      continue
    }
    if (alike) {
      const walked = stood.parts[parts.length]!
      parts.push(walked)
      before = walked.replies
      continue
    }
    const own = answersOf(part.questions, kept.once)
    const walked = gathering ? notYet(own, before) : walk(part, own, before, rules)
    parts.push({ part: part.id, ...walked })
    before = walked.replies
  }
  const place = placeIn(flow, parts, items, kept.closed)
  const followed = { parts: alike ? stood.parts : parts, items, closed: kept.closed, place }
  return { followed, kept, around }
}

/** Items by their number. */
const itemsOf = (kept: Kept, walked: (answers: Answers) => Walk): Item[] =>
  [...kept.items]
    .sort(([a], [b]) => a - b)
    .map(([n, { answers, dropped }]) => ({ n, dropped, ...walked(answers) }))

/** The same, where all but one stand as they stood. */
function itemsOn(
  kept: Kept,
  stood: readonly Item[],
  touched: number,
  walked: (answers: Answers) => Walk,
): readonly Item[] {
  const own = kept.items.get(touched)
  if (!own) return stood
  const item = { n: touched, dropped: own.dropped, ...walked(own.answers) }
  const at = stood.findIndex(({ n }) => n >= touched)
  if (at < 0) return [...stood, item]
  return stood[at]!.n === touched ? stood.with(at, item) : stood.toSpliced(at, 0, item)
}

/** The very same replies. */
function isSame(some: Replies, others: Replies): boolean {
  if (some === others) return true
  const ids = Object.keys(some)
  return ids.length === Object.keys(others).length && ids.every((id) => some[id] === others[id])
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
