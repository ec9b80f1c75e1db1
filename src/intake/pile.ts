import { tagCode } from '../base/tag.ts'
import { type Followed, follow } from '../flow/follow.ts'
import type { ContactValue, Flow, Question, Replies } from '../flow/grammar.ts'
import { resolve } from '../garment/derive.ts'
import type { Facts, Recipient } from '../garment/facts.ts'
import type { Grading } from '../garment/grade.ts'
import type { Panel } from '../garment/panels.ts'
import type { Estimate } from '../quilt/estimate.ts'
import { graphicFits, type Layout, type QuiltSize } from '../quilt/layout.ts'
import { pileFits } from '../quilt/pile-fit.ts'
import type { Sharing } from '../quilt/plan/instance.ts'
import { type Rates, ratesAt } from '../quilt/rates.ts'
import type { Settled } from '../quilt/settled.ts'
import { type Tally, tally } from '../quilt/tally.ts'
import type { PileRow } from '../store/schema.ts'
import { type Betterment, bettermentOf } from './better.ts'
import { clothOf } from './cloth.ts'
import type { Knowledge } from './knowledge.ts'
import { calledIn } from './own-words.ts'
import { type Otherwise, priced } from './priced.ts'
import { amount, chosen, given } from './replies.ts'
import type { Entry } from './rows.ts'
import { rules } from './rules.ts'
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
  /** Ids of the layouts that suit what is left beside its single picture; null: it has none, or no grade yet. */
  readonly rest: readonly string[] | null
  /** Null before it is graded. */
  readonly better: Betterment | null
}

export interface Wish {
  /** The layout and size that the pile is counted for, and whether the customer chose them. */
  readonly layout: Layout
  readonly layoutChosen: boolean
  readonly size: QuiltSize
  readonly sizeChosen: boolean
  readonly quilts: number
  /** How several quilts share the garments; null: there is one. */
  readonly sharing: Sharing | null
}

/** A layout, by its id, and a size that the workshop chose in place of what was wished. */
export interface Wished {
  readonly layout?: string | undefined
  readonly size?: QuiltSize | undefined
}

export interface PostBox {
  readonly weightG: number
  readonly count: number
  readonly w: number
  readonly h: number
  readonly d: number
}

export interface Pile {
  readonly followed: Followed
  readonly replies: Replies
  readonly recipient: Recipient
  readonly wish: Wish
  /** Of the day it last changed. */
  readonly rates: Rates
  /** In the order they were added, dropped ones too. */
  readonly garments: readonly Garment[]
  readonly tally: Tally
  /** Counted roughly; null while nothing is graded. */
  readonly estimate: Estimate | null
  /** Counted from what a plan settles. */
  readonly priced: (settled: Settled | null, otherwise?: Otherwise) => Estimate | null
  /** What the garments may be posted in: inches, grams; null while nothing is graded. */
  readonly box: PostBox | null
  readonly contact: ContactValue | null
  /** About how many garments the customer has; null: not told. */
  readonly atHand: number | null
  /** The day it is needed, ms UTC; null: no hurry. */
  readonly needBy: number | null
  /** At least one garment is told to the end, and none is half told. */
  readonly canClose: boolean
}

function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | null = null
  return () => {
    made ??= { value: make() }
    return made.value
  }
}

const week = 7 * 24 * 60 * 60 * 1000

/** When each question was last answered, by item and question. */
function times(entries: readonly Entry[]): Map<string, number> {
  const at = new Map<string, number>()
  for (const entry of entries) {
    if (entry.act.act === 'answer') at.set(`${entry.act.item} ${entry.act.question}`, entry.at)
  }
  return at
}

const counted = (garments: readonly Garment[]) =>
  garments.filter(({ dropped, grading }) => !dropped && grading !== null)

/** The layout most garments suit; the first of the shop's list where several do. */
function bestLayout(garments: readonly Garment[], layouts: readonly Layout[]): Layout {
  const graded = garments.flatMap(({ grading }) => grading ?? [])
  const [best] = pileFits(graded, layouts)
  return layouts.find(({ id }) => id === best?.layout) ?? layouts[0]!
}

const sizeFor = (recipient: Recipient): QuiltSize =>
  recipient === 'under1' || recipient === 'under3' ? 'crib' : 'throw'

/** A layout may have left the shop since it was chosen. */
const layoutWished = (
  replies: Replies,
  layouts: readonly Layout[],
  instead: Wished,
): Layout | undefined =>
  layouts.find(({ id }) => id === instead.layout) ??
  layouts.find(({ id }) => id === chosen(replies, 'layout_wish'))

function wishOf(
  replies: Replies,
  recipient: Recipient,
  garments: readonly Garment[],
  layouts: readonly Layout[],
  instead: Wished,
): Wish {
  const wanted = layoutWished(replies, layouts, instead)
  const size = instead.size ?? chosen(replies, 'quilt_size')
  const sizeChosen = size !== undefined && size !== 'unsure'
  const quilts = amount(replies, 'quilt_count') ?? 1
  return {
    layout: wanted ?? bestLayout(garments, layouts),
    layoutChosen: wanted !== undefined,
    size: sizeChosen ? (size as QuiltSize) : sizeFor(recipient),
    sizeChosen,
    quilts,
    // Not asked of piles that were begun before it was a question.
    sharing: quilts > 1 ? ((chosen(replies, 'sharing') ?? 'as-it-falls') as Sharing) : null,
  }
}

function boxOf({ weightG, box }: Estimate, rates: Rates): PostBox {
  const { w, h, d } = rates.boxes.find((one) => one.box === box.box)!
  return { weightG, count: box.count, w, h, d }
}

/**
 * A pile from its appended acts, from what the workshop made of its garments, by number, and from what it chose
 * instead of a wish. Pure: the same acts, facts and knowledge give the same pile.
 */
export function derivePile(
  knowledge: Knowledge,
  flow: Flow,
  row: PileRow,
  entries: readonly Entry[],
  atDesk: ReadonlyMap<number, AtDesk> = new Map(),
  instead: Wished = {},
): Pile {
  const followed = follow(
    flow,
    entries.map(({ act }) => act),
    rules,
  )
  const replies = followed.parts.at(-1)?.replies ?? {}
  const at = times(entries)
  const recipient = (chosen(replies, 'recipient') ?? 'unknown') as Recipient
  const wanted = layoutWished(replies, knowledge.layouts, instead)
  const fitsAFrame = (inches: number) =>
    knowledge.layouts.some((layout) => graphicFits(layout, { w: inches, h: inches }))

  const garments = followed.items.map((item): Garment => {
    const when = (question: string) => at.get(`${item.n} ${question}`) ?? row.started_at
    const told = tell(item.replies, when, fitsAFrame, atDesk.get(item.n))
    const said = resolve(told.known)
    const cloth = clothOf(said.kind, told.size, said.wear, told.spots)
    const facts = { ...said, yield: cloth.yield }
    const forPile = { recipient, layout: wanted?.id }
    const better = once(() =>
      bettermentOf(knowledge, { facts, replies: item.replies }, forPile, [
        ...item.path,
        ...followed.parts.flatMap(({ path }) => path),
      ]),
    )
    const besidePicture = once(() => {
      const rest: Facts = { ...facts, pattern: 'solid', graphic: 'none' }
      const { layouts } = knowledge.grade(rest, forPile)
      return layouts.filter(({ fits }) => fits).map(({ layout }) => layout)
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
      get rest() {
        return item.open || facts.pattern !== 'single' ? null : besidePicture()
      },
      get better() {
        return item.open ? null : better()
      },
    }
  })

  const standing = counted(garments)
  const wish = wishOf(replies, recipient, standing, knowledge.layouts, instead)
  const rates = ratesAt(knowledge.rates, new Date(row.changed_at).toISOString().slice(0, 10))
  const byPlan: Pile['priced'] = (settled, otherwise) =>
    priced({ garments, wish, rates }, knowledge.layouts, settled, otherwise)
  // An answer asks for no price; the pages that show one do.
  const estimated = once(() => byPlan(null))
  const weeks = amount(replies, 'needed_in')

  return {
    followed,
    replies,
    recipient,
    wish,
    rates,
    garments,
    tally: tally(
      standing.map(({ facts, panels, grading }) => ({
        grade: grading!.grade,
        facts,
        panels,
        layouts: grading!.layouts,
      })),
      wish.layout,
      wish.size,
      wish.quilts,
    ),
    get estimate() {
      return estimated()
    },
    priced: byPlan,
    get box() {
      const known = estimated()
      return known && boxOf(known, rates)
    },
    contact: (given(replies, 'contact') as ContactValue | undefined) ?? null,
    atHand: amount(replies, 'at_hand') ?? null,
    needBy: weeks === undefined ? null : (at.get('0 needed_in') ?? row.started_at) + weeks * week,
    canClose: standing.length > 0 && garments.every(({ dropped, open }) => dropped || !open),
  }
}
