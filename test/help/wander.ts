import { type Followed, follow } from '../../src/flow/follow.ts'
import type { Act, Flow, Question, Replies, Reply, Rules } from '../../src/flow/grammar.ts'
import { allReplies, sampleReplies } from '../../src/flow/replies-of.ts'
import { makesSense } from '../../src/flow/sense.ts'

/** A whole number from 0 up to, not including, `below`. */
export type Pick = (below: number) => number

/** The same picks for the same seed. */
export function picker(seed: number): Pick {
  let state = seed >>> 0
  return (below) => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
    return Math.floor((state / 2 ** 32) * below)
  }
}

/** Labels of every kind: sure and unsure, hot and cold, cloth and nonsense. */
export const labels: readonly string[] = [
  '100% cotton, hot iron',
  '100% cotton',
  '50% cotton 50% polyester, warm iron',
  '60% cotton, hot iron',
  '30% cotton warm iron',
  '100% wool cool iron',
  '100% acetate, cool iron',
  '100% polypropylene',
  '70% acrylic, do not iron',
  'do not iron',
  'made with love',
]

const labelReplies: readonly Reply[] = [
  ...labels.flatMap((words) =>
    ([null, 'hot', 'cool', 'none', 'absent'] as const).map((iron) => ({
      given: { found: 'words' as const, words, iron },
    })),
  ),
  { given: { found: 'words', words: labels[2]!, iron: null, doubted: true } },
  { given: { found: 'signs', words: '', iron: null } },
  { given: { found: 'none', words: '', iron: null } },
]

/** Names that are more than that: lines that answer what is asked later. */
const ownLines: readonly Reply[] = [
  { given: 'red plaid flannel, large, hole at the elbow' },
  { given: 'black velvet dress, very stretchy, glitter print on the front, size M' },
]

const known = new WeakMap<Question, readonly Reply[]>()

/** Every reply a question may get, or one of each way where nobody can list them. */
export function repliesOf(question: Question): readonly Reply[] {
  const before = known.get(question)
  if (before) return before
  const replies =
    question.kind === 'label'
      ? [...labelReplies, { asked: 'Which one?' }]
      : [
          ...(allReplies(question) ?? sampleReplies(question)),
          ...(question.id === 'name' && question.kind === 'text' ? ownLines : []),
        ]
  known.set(question, replies)
  return replies
}

/** Some reply that the question may get where it stands. */
export function someReply(question: Question, replies: Replies, rules: Rules, pick: Pick): Reply {
  const all = repliesOf(question)
  for (;;) {
    const reply = all[pick(all.length)]!
    if (makesSense(question, reply, replies, rules)) return reply
  }
}

/** What a visitor may do next: mostly answer what is open, at times go back, add, copy, leave out. */
export function nextAct(state: Followed, rules: Rules, pick: Pick): Act {
  const fresh = Math.max(0, ...state.items.map(({ n }) => n)) + 1
  const chance = pick(20)
  const items = state.items
  if (items.length > 0 && chance === 0) return { act: 'drop', item: items[pick(items.length)]!.n }
  if (items.length > 0 && chance === 1)
    return { act: 'restore', item: items[pick(items.length)]!.n }
  if (items.length > 0 && items.length < 5 && chance === 2) {
    return { act: 'copy', item: fresh, from: items[pick(items.length)]!.n }
  }
  if (chance < 6) {
    const walks = [
      ...state.parts.map((part) => ({ item: 0, ...part })),
      ...items.filter(({ dropped }) => !dropped).map((item) => ({ item: item.n, ...item })),
    ].filter(({ path }) => path.length > 0)
    const walk = walks[pick(walks.length)]
    const question = walk?.path[pick(walk.path.length)]?.question
    if (walk && question) {
      const reply = someReply(question, walk.replies, rules, pick)
      return { act: 'answer', item: walk.item, question: question.id, reply }
    }
  }
  return onward(state, rules, pick) ?? { act: 'add', item: fresh }
}

/** The answer to what is open; null where nothing is. */
export function onward({ place, parts, items }: Followed, rules: Rules, pick: Pick): Act | null {
  if (place.at !== 'question') return null
  const { item, question } = place
  const walk =
    item === 0 ? parts.find(({ part }) => part === place.part)! : items.find(({ n }) => n === item)!
  return {
    act: 'answer',
    item,
    question: question.id,
    reply: someReply(question, walk.replies, rules, pick),
  }
}

/** So many acts of one visitor. */
export function wander(flow: Flow, rules: Rules, pick: Pick, steps: number): Act[] {
  const acts: Act[] = []
  for (let step = 0; step < steps; step += 1)
    acts.push(nextAct(follow(flow, acts, rules), rules, pick))
  return acts
}
