import { Failure } from '../base/failures.ts'
import { type Followed, type Item, isComplete } from './followed.ts'
import type { Act, Flow } from './grammar.ts'
import { questionsOf, repeatedPart } from './kept.ts'
import type { Walk } from './walk.ts'

/**
 * Throws the Failure that says why an act cannot be taken where the conversation stands: `not_found`,
 * `question_moved_on`, `too_many_items` {most}, `nothing_gathered`, `bad_input`. Whether a reply fits
 * its question is readReply's to say.
 */
export function admit(flow: Flow, followed: Followed, act: Act): void {
  switch (act.act) {
    case 'answer':
      admitAnswer(flow, followed, act)
      return
    case 'add':
      admitNew(flow, followed, act.item)
      return
    case 'copy':
      itemOf(followed, act.from)
      admitNew(flow, followed, act.item)
      return
    case 'drop':
      itemOf(followed, act.item)
      return
    case 'restore':
      if (itemOf(followed, act.item).dropped) admitOneMore(flow, followed)
      return
    case 'close':
      if (!followed.items.some(isComplete)) throw new Failure('nothing_gathered')
  }
}

function itemOf(followed: Followed, n: number): Item {
  const item = followed.items.find((one) => one.n === n)
  if (!item) throw new Failure('not_found', { item: n })
  return item
}

function admitAnswer(
  flow: Flow,
  followed: Followed,
  { item: n, question, because, ahead }: Extract<Act, { act: 'answer' }>,
): void {
  const { once, repeated } = questionsOf(flow)
  if (n === 0) {
    if (!once.has(question)) throw new Failure('not_found', { question })
    if (followed.parts.some((part) => isThere(part, question))) return
    throw new Failure('question_moved_on', { question })
  }
  const item = itemOf(followed, n)
  if (!repeated.has(question)) throw new Failure('not_found', { question })
  const isEarly = because !== undefined || ahead === true
  if (item.dropped || !(isEarly || isThere(item, question))) {
    throw new Failure('question_moved_on', { question, item: n })
  }
}

const isThere = (walk: Walk, id: string): boolean =>
  walk.open?.id === id || walk.path.some(({ question }) => question.id === id)

function admitNew(flow: Flow, followed: Followed, n: number): void {
  const isFree = Number.isInteger(n) && n > 0 && !followed.items.some((item) => item.n === n)
  if (!repeatedPart(flow) || !isFree) throw new Failure('bad_input', { item: n })
  admitOneMore(flow, followed)
}

function admitOneMore(flow: Flow, followed: Followed): void {
  const most = repeatedPart(flow)?.most ?? Number.POSITIVE_INFINITY
  const here = followed.items.filter(({ dropped }) => !dropped).length
  if (here >= most) throw new Failure('too_many_items', { most })
}
