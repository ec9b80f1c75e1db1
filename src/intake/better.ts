import type { Replies } from '../flow/grammar.ts'
import type { Step as Asked } from '../flow/walk.ts'
import { type Better, better } from '../garment/better.ts'
import type { Act } from '../garment/better-acts.ts'
import type { Facts } from '../garment/facts.ts'
import type { PileFacts } from '../garment/grade.ts'
import type { Knowledge } from './knowledge.ts'
import { readingOf } from './label.ts'
import { ticked } from './replies.ts'

/** What could better a garment: for the customer what they can do themselves, for staff everything. */
export interface Betterment {
  readonly customer: Better
  readonly staff: Better
}

/** A label that forbids washing is heeded even where its reading is unsure. */
const forbidsWashing = (replies: Replies): boolean =>
  ticked(replies, 'signs').includes('wash-none') ||
  readingOf(replies)?.care.includes('no-wash') === true

const mostKept = 2_000
const kept = new WeakMap<Knowledge, Map<string, Better>>()

/** The same garments are shown again and again; what could better one hangs on its facts alone. */
function betterOf(
  knowledge: Knowledge,
  facts: Facts,
  pile: PileFacts,
  acts: readonly Act[],
): Better {
  const known = kept.get(knowledge) ?? new Map<string, Better>()
  kept.set(knowledge, known)
  const key = JSON.stringify([facts, pile, acts.map(({ act }) => act)])
  const before = known.get(key)
  if (before) return before
  if (known.size >= mostKept) known.clear()
  const found = better(facts, pile, knowledge.grading, acts)
  known.set(key, found)
  return found
}

/** `asked` are the questions that the customer may still answer otherwise. */
export function bettermentOf(
  knowledge: Knowledge,
  garment: { readonly facts: Facts; readonly replies: Replies },
  pile: PileFacts,
  asked: readonly Asked[],
): Betterment {
  const { facts, replies } = garment
  const dry = forbidsWashing(replies)
  const acts = knowledge.acts.filter(({ wets }) => !(wets && dry))
  const theirs = acts.filter(
    ({ by, question }) => by === 'customer' && asked.some((step) => step.question.id === question),
  )
  return {
    customer: betterOf(knowledge, facts, pile, theirs),
    staff: betterOf(knowledge, facts, pile, acts),
  }
}
