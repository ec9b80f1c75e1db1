import { once } from '../base/once.ts'
import { type Followed, type Following, following } from '../flow/follow.ts'
import type { ContactValue, Flow, Replies } from '../flow/grammar.ts'
import type { Recipient } from '../garment/facts.ts'
import type { Estimate } from '../quilt/estimate.ts'
import type { Layout, QuiltSize } from '../quilt/layout.ts'
import { pileFits } from '../quilt/pile-fit.ts'
import type { Sharing } from '../quilt/plan/instance.ts'
import { type Rates, ratesAt } from '../quilt/rates.ts'
import type { Settled } from '../quilt/settled.ts'
import { type Tally, tally } from '../quilt/tally.ts'
import type { PileRow } from '../store/schema.ts'
import { type Around, type Garment, garmentOf } from './garment.ts'
import type { Knowledge } from './knowledge.ts'
import { type Otherwise, priced } from './priced.ts'
import { amount, chosen, given } from './replies.ts'
import type { Entry } from './rows.ts'
import { rules } from './rules.ts'
import { noTimes, type Times, timesOf, timesOn } from './times.ts'
import type { AtDesk } from './told.ts'

export type { Garment } from './garment.ts'

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

const week = 7 * 24 * 60 * 60 * 1000

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

const nothing: ReadonlyMap<number, AtDesk> = new Map()

/** A pile with what it was derived from, so that one entry more need not derive all of it again. */
export interface Derived {
  readonly following: Following
  readonly times: Times
  readonly pile: Pile
}

/**
 * A pile from its appended acts, from what the workshop made of its garments, by number, and from what it chose
 * instead of a wish. Pure: the same acts, facts and knowledge give the same pile.
 */
export const derivePile = (
  knowledge: Knowledge,
  flow: Flow,
  row: PileRow,
  entries: readonly Entry[],
  atDesk: ReadonlyMap<number, AtDesk> = nothing,
  instead: Wished = {},
): Pile => derive(knowledge, flow, row, entries, atDesk, instead).pile

/** The same, ready to be derived on. */
export function derive(
  knowledge: Knowledge,
  flow: Flow,
  row: PileRow,
  entries: readonly Entry[],
  atDesk: ReadonlyMap<number, AtDesk> = nothing,
  instead: Wished = {},
): Derived {
  const acts = entries.map(({ act }) => act)
  const followed = following(flow, acts, rules)
  const times = timesOf(entries)
  const pile = pileFrom(knowledge, row, { following: followed, times, atDesk, instead })
  return { following: followed, times, pile }
}

/** Entries that came after what was derived, and where the conversation stands behind them. */
export interface More {
  readonly entries: readonly Entry[]
  readonly following: Following
}

/** What deriving gives with these more, as the row stands then: the same as deriving all of them anew. */
export function deriveOn(
  knowledge: Knowledge,
  row: PileRow,
  before: Derived,
  { entries, following: followed }: More,
): Derived {
  const times = entries.reduce(timesOn, before.times)
  const pile = pileFrom(knowledge, row, {
    following: followed,
    times,
    atDesk: nothing,
    instead: {},
    before: before.pile,
  })
  return { following: followed, times, pile }
}

const tallyOf = (standing: readonly Garment[], wish: Wish): Tally =>
  tally(
    standing.map(({ facts, panels, grading }) => ({
      grade: grading!.grade,
      facts,
      panels,
      layouts: grading!.layouts,
    })),
    wish.layout,
    wish.size,
    wish.quilts,
  )

/** What counts each pile's tally, when it is first asked for. */
const tallies = new WeakMap<Pile, () => Tally>()

/** Nothing that is tallied has changed. */
function isAlike({ garments, wish: was }: Pile, standing: readonly Garment[], wish: Wish): boolean {
  const stood = counted(garments)
  return (
    was.layout === wish.layout &&
    was.size === wish.size &&
    was.quilts === wish.quilts &&
    stood.length === standing.length &&
    stood.every((garment, nth) => garment === standing[nth])
  )
}

function pileFrom(
  knowledge: Knowledge,
  row: PileRow,
  {
    following: { followed },
    times,
    atDesk,
    instead,
    before = null,
  }: {
    readonly following: Following
    readonly times: Times
    readonly atDesk: ReadonlyMap<number, AtDesk>
    readonly instead: Wished
    /** The same pile some acts before. */
    readonly before?: Pile | null
  },
): Pile {
  const replies = followed.parts.at(-1)?.replies ?? {}
  const recipient = (chosen(replies, 'recipient') ?? 'unknown') as Recipient
  const wanted = layoutWished(replies, knowledge.layouts, instead)
  const around: Around = { knowledge, row, recipient, layout: wanted?.id, parts: followed.parts }
  const garments = followed.items.map((item) =>
    garmentOf(item, times.get(item.n) ?? noTimes, atDesk.get(item.n), around),
  )

  const standing = counted(garments)
  const wish = wishOf(replies, recipient, standing, knowledge.layouts, instead)
  const rates = ratesAt(knowledge.rates, new Date(row.changed_at).toISOString().slice(0, 10))
  const byPlan: Pile['priced'] = (settled, otherwise) =>
    priced({ garments, wish, rates }, knowledge.layouts, settled, otherwise)
  // An answer asks for no price; the pages that show one do.
  const estimated = once(() => byPlan(null))
  const weeks = amount(replies, 'needed_in')
  const known = before && isAlike(before, standing, wish) && tallies.get(before)
  const tallied = known || once(() => tallyOf(standing, wish))

  const pile: Pile = {
    followed,
    replies,
    recipient,
    wish,
    rates,
    garments,
    get tally() {
      return tallied()
    },
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
    needBy:
      weeks === undefined
        ? null
        : (times.get(0)?.get('needed_in') ?? row.started_at) + weeks * week,
    canClose: standing.length > 0 && garments.every(({ dropped, open }) => dropped || !open),
  }
  tallies.set(pile, tallied)
  return pile
}
