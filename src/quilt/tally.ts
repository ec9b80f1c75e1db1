import type { Facts } from '../garment/facts.ts'
import type { Grade } from '../garment/grade.ts'
import type { LayoutFit } from '../garment/layout-fit.ts'
import { type Panel, panelsOf } from '../garment/panels.ts'
import { demand, designOf, type Wanted } from './design.ts'
import type { Extent, Layout, QuiltSize } from './layout.ts'
import { pieceCount } from './yield.ts'

/** A graded garment as the tally sees it. */
export interface Counted {
  readonly grade: Grade
  readonly facts: Pick<Facts, 'pattern'>
  readonly panels: readonly Panel[]
  readonly layouts: readonly LayoutFit[]
}

/** Pieces of one size: wanted by the quilt, and to be had from the garments that are good to send. */
export interface SizeTally {
  readonly size: Extent
  readonly want: number
  readonly have: number
}

export interface Tally {
  /** Garments good to send, waiting for a person, and kept at home. */
  readonly good: number
  readonly maybe: number
  readonly home: number
  /** Of the good ones, those whose cloth suits this layout. */
  readonly suits: number
  readonly pieces: readonly SizeTally[]
  /** How many more garments, about. */
  readonly more: { readonly low: number; readonly high: number }
  /** The cloth at hand fills the quilt. */
  readonly enough: boolean
}

type Supplier = Pick<Counted, 'facts' | 'panels'>

const isGood = ({ grade }: Counted): boolean => grade === 'sound' || grade === 'care'

/** Pieces wanted of garments by size, the largest first. */
function wantedSizes(layout: Layout, size: QuiltSize, alike: number): SizeTally[] {
  const sums = new Map<string, SizeTally>()
  for (const piece of wantedOf(layout, size)) {
    if (layout.bought.includes(piece.role)) continue
    const key = `${piece.size.w}x${piece.size.h}`
    const sum = sums.get(key)
    sums.set(key, { size: piece.size, want: piece.count * alike + (sum?.want ?? 0), have: 0 })
  }
  return [...sums.values()]
}

const designed = new WeakMap<Layout, Map<QuiltSize, readonly Wanted[]>>()

/** Every piece of a quilt whose pictures are not known yet; a layout asks the same of every pile. */
function wantedOf(layout: Layout, size: QuiltSize): readonly Wanted[] {
  const bySize = designed.get(layout) ?? new Map<QuiltSize, readonly Wanted[]>()
  designed.set(layout, bySize)
  const pieces = bySize.get(size) ?? demand(designOf(layout, size, [])).pieces
  bySize.set(size, pieces)
  return pieces
}

// The panels of a kind and size are the same objects in every pile.
const given = new WeakMap<Panel, Map<string, number>>()

/** Pieces that one of a panel's copies gives, counted once for each panel and size. */
function gives(panel: Panel, piece: Extent): number {
  const bySize = given.get(panel) ?? new Map<string, number>()
  given.set(panel, bySize)
  const key = `${piece.w}x${piece.h}`
  const count = bySize.get(key) ?? pieceCount({ ...panel, count: 1 }, piece)
  bySize.set(key, count)
  return count
}

/** One panel: how many pieces of each wanted size it gives, whichever it is cut for. */
type Gives = readonly number[]

const isSingle = ({ facts }: Supplier): boolean => facts.pattern === 'single'

/** Panels one by one, as they are cut. */
const cutFrom = ({ panels }: Supplier, wanted: readonly SizeTally[]): Gives[] =>
  panels.flatMap((panel) => {
    const each = wanted.map(({ size }) => gives(panel, size))
    return Array<Gives>(panel.count).fill(each)
  })

/** Garments with one whole graphic give the largest pieces, so they are cut first. */
interface Panels {
  readonly single: readonly Gives[]
  readonly others: readonly Gives[]
}

const panelsFrom = (garments: readonly Supplier[], wanted: readonly SizeTally[]): Panels => ({
  single: garments.filter(isSingle).flatMap((one) => cutFrom(one, wanted)),
  others: garments.filter((one) => !isSingle(one)).flatMap((one) => cutFrom(one, wanted)),
})

/**
 * Largest pieces first. A panel is cut for one size only, so the count is a floor: a planner finds as much
 * or more. Pieces that are had of each size, no more than are wanted.
 */
function cut(panels: readonly Gives[], wanted: readonly SizeTally[]): number[] {
  const left = [...panels]
  return wanted.map(({ want }, nth) => {
    let have = 0
    let kept = 0
    for (const panel of left) {
      const given = panel[nth]!
      if (have >= want || given === 0) left[kept++] = panel
      else have += given
    }
    left.length = kept
    return Math.min(have, want)
  })
}

function supply({ single, others }: Panels, wanted: readonly SizeTally[]): SizeTally[] {
  const have = cut([...single, ...others], wanted)
  return wanted.map((size, nth) => ({ ...size, have: have[nth]! }))
}

const filled = (pieces: readonly SizeTally[]): boolean =>
  pieces.every(({ want, have }) => have >= want)

/** Asked for no more than this: beyond it the pile and the quilt do not belong together. */
const mostMore = 99

function moreLike(one: Supplier, have: Panels, wanted: readonly SizeTally[]): number {
  const own = cutFrom(one, wanted)
  const { single, others } = have
  const enoughWith = (n: number) => {
    const more = Array<Gives[]>(n).fill(own).flat()
    const all = isSingle(one) ? [...single, ...more, ...others] : [...single, ...others, ...more]
    return cut(all, wanted).every((count, nth) => count >= wanted[nth]!.want)
  }
  if (enoughWith(0)) return 0
  // From few up: a try costs as much as the panels it lays out, and piles seldom want many.
  let [short, enough] = [0, 1]
  while (!enoughWith(enough)) {
    if (enough === mostMore) return mostMore
    ;[short, enough] = [enough, Math.min(2 * enough, mostMore)]
  }
  while (enough - short > 1) {
    const middle = (short + enough) >> 1
    if (enoughWith(middle)) enough = middle
    else short = middle
  }
  return enough
}

const shirt = (size: 'S' | 'XL'): Supplier => ({
  facts: { pattern: 'solid' },
  panels: panelsOf('tshirt', size),
})

const area = ({ panels }: Supplier): number =>
  panels.reduce((sum, { w, h, count }) => sum + w * h * count, 0)

/** What another garment may be like: the middle and the largest of those at hand, else a T-shirt. */
function anotherLike(garments: readonly Supplier[]): { small: Supplier; large: Supplier } {
  if (garments.length === 0) return { small: shirt('S'), large: shirt('XL') }
  const bySize = garments.toSorted((a, b) => area(a) - area(b))
  return { small: bySize[(bySize.length - 1) >> 1]!, large: bySize.at(-1)! }
}

/**
 * How many garments' worth of variety the suppliers bring, by their cloth: one that gives as much as
 * any of the least wanted garments should counts as one, however much more it has; a baby's suit that
 * gives three squares counts for three squares. Counted in the size that takes most of the quilt.
 */
function variety(
  garments: readonly Supplier[],
  wanted: readonly SizeTally[],
  least: number,
): number {
  const cloth = ({ size, want }: SizeTally) => size.w * size.h * want
  const main = wanted.reduce((most, one) => (cloth(one) > cloth(most) ? one : most))
  const share = main.want / least
  return garments.reduce((sum, { panels }) => {
    const got = panels.reduce((all, panel) => all + panel.count * gives(panel, main.size), 0)
    return sum + Math.min(1, got / share)
  }, 0)
}

/**
 * Pieces at hand against pieces wanted, and about how many more garments. The low figure counts
 * cloth alone; the high one also asks for enough different cloth to make a lively quilt.
 */
export function tally(
  garments: readonly Counted[],
  layout: Layout,
  size: QuiltSize,
  alike = 1,
): Tally {
  const good = garments.filter(isGood)
  const suits = good.filter(({ layouts }) =>
    layouts.some((fit) => fit.layout === layout.id && fit.fits),
  )
  const wanted = wantedSizes(layout, size, alike)
  const panels = panelsFrom(suits, wanted)
  const pieces = supply(panels, wanted)
  const { small, large } = anotherLike(suits)
  const low = moreLike(large, panels, wanted)
  const least = layout.garments[size][0] * alike
  const varied = Math.ceil(least - variety(suits, wanted, least) - 1e-9)
  return {
    good: good.length,
    maybe: garments.filter(({ grade }) => grade === 'eyes').length,
    home: garments.filter(({ grade }) => grade === 'home').length,
    suits: suits.length,
    pieces,
    more: { low, high: Math.max(low, moreLike(small, panels, wanted), varied) },
    enough: filled(pieces),
  }
}
