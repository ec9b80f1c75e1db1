import { once } from '../base/once.ts'
import { tagCode } from '../base/tag.ts'
import type { Followed, Item } from '../flow/follow.ts'
import type { Question, Replies } from '../flow/grammar.ts'
import { resolve } from '../garment/derive.ts'
import type { Facts, Recipient } from '../garment/facts.ts'
import { type Flag, type Grading, gradeOf } from '../garment/grade.ts'
import type { Panel } from '../garment/panels.ts'
import { graphicFits } from '../quilt/layout.ts'
import type { PileRow } from '../store/schema.ts'
import { type Betterment, bettermentOf } from './better.ts'
import { toldAhead } from './closet.ts'
import { clothOf } from './cloth.ts'
import type { Knowledge } from './knowledge.ts'
import { calledIn } from './own-words.ts'
import { chosen } from './replies.ts'
import { type AtDesk, type Told, tell } from './told.ts'

/** One garment as its replies tell of it. A garment with an open question has no grade yet. */
export interface Garment {
  readonly n: number
  readonly code: string
  readonly name: string | null
  readonly dropped: boolean
  readonly open: Question | null
  readonly path: Followed['items'][number]['path']
  readonly replies: Replies
  readonly told: Told
  readonly facts: Facts
  readonly panels: readonly Panel[]
  readonly grading: Grading | null
  /** While questions are open: what is grave by what was told alone, so that no answer takes it away; null: nothing. */
  readonly early: Grading | null
  /** Ids of the layouts that suit what is left beside its single picture; null: it has none, or no grade yet. */
  readonly rest: readonly string[] | null
  /** Null before it is graded. */
  readonly better: Betterment | null
}

/** What a garment is derived from beside its own replies. */
export interface Around {
  readonly knowledge: Knowledge
  readonly row: PileRow
  readonly recipient: Recipient
  /** The layout that is wished for, by its id. */
  readonly layout: string | undefined
  /** The pile's own parts, as far as they are walked. */
  readonly parts: Followed['parts']
}

/** A garment with what it was made from beside its item. */
interface Made {
  readonly by: Around
  readonly garment: Garment
}

/**
 * An item is one object for as long as no act is about it and what was told before it stays: what was made of it
 * then holds, and an answer costs one garment and not the whole pile.
 */
const known = new WeakMap<Item, Made>()

/** `at`: when each of its questions was last answered, ms UTC. `desk`: what the workshop made of it. */
export function garmentOf(
  item: Item,
  at: ReadonlyMap<string, number>,
  desk: AtDesk | undefined,
  around: Around,
): Garment {
  if (desk) return make(item, at, desk, around)
  const before = known.get(item)
  if (before && holds(before, around)) return before.garment
  const garment = make(item, at, undefined, around)
  known.set(item, { by: around, garment })
  return garment
}

const holds = ({ by }: Made, { knowledge, row, recipient, layout, parts }: Around): boolean =>
  by.parts === parts &&
  by.knowledge === knowledge &&
  by.recipient === recipient &&
  by.layout === layout &&
  by.row.number === row.number &&
  by.row.started_at === row.started_at

function make(
  item: Item,
  at: ReadonlyMap<string, number>,
  desk: AtDesk | undefined,
  { knowledge, row, recipient, layout, parts }: Around,
): Garment {
  const fitsAFrame = (inches: number) =>
    knowledge.layouts.some((one) => graphicFits(one, { w: inches, h: inches }))
  const when = (question: string) => at.get(question) ?? row.started_at
  const told = tell(item.replies, when, fitsAFrame, desk)
  const said = resolve(told.known)
  const cloth = clothOf(said.kind, told.size, said.wear, told.spots)
  const facts = { ...said, yield: cloth.yield }
  const forPile = { recipient, layout }
  const better = once(() =>
    bettermentOf(knowledge, { facts, replies: item.replies }, forPile, [
      ...item.path,
      ...parts.flatMap(({ path }) => path),
    ]),
  )
  const besidePicture = once(() => {
    const rest: Facts = { ...facts, pattern: 'solid', graphic: 'none' }
    const { layouts } = knowledge.grade(rest, forPile)
    return layouts.filter(({ fits }) => fits).map(({ layout: id }) => id)
  })
  const graveAlready = once((): Grading | null => {
    const ahead = tell(toldAhead(item), when, fitsAFrame, desk)
    const isTold = (fact: string) => Object.hasOwn(ahead.known, fact)
    const isGrave = ({ severity }: Flag) => severity === 'home' || severity === 'eyes'
    const grading = knowledge.grade(resolve(ahead.known), forPile)
    const flags = grading.flags.filter((flag) => isGrave(flag) && flag.because.every(isTold))
    const grade = gradeOf(flags.map(({ severity }) => severity))
    return flags.length > 0 ? { ...grading, flags, grade } : null
  })
  return {
    n: item.n,
    code: tagCode(row.number, item.n),
    name: calledIn(chosen(item.replies, 'name')),
    dropped: item.dropped,
    open: item.open,
    path: item.path,
    replies: item.replies,
    told,
    facts,
    panels: cloth.panels,
    grading: item.open ? null : knowledge.grade(facts, forPile),
    get early() {
      return item.open ? graveAlready() : null
    },
    get rest() {
      return item.open || facts.pattern !== 'single' ? null : besidePicture()
    },
    get better() {
      return item.open ? null : better()
    },
  }
}
