import type { Facts } from '../garment/facts.ts'
import type { Grade } from '../garment/grade.ts'
import type { LayoutFit } from '../garment/layout-fit.ts'
import { type Panel, panelsOf } from '../garment/panels.ts'
import { demand, designOf } from './design.ts'
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
  for (const piece of demand(designOf(layout, size, [])).pieces) {
    if (layout.bought.includes(piece.role)) continue
    const key = `${piece.size.w}x${piece.size.h}`
    const sum = sums.get(key)
    sums.set(key, { size: piece.size, want: piece.count * alike + (sum?.want ?? 0), have: 0 })
  }
  return [...sums.values()]
}

type Gives = (panel: Panel, piece: Extent) => number

/** Pieces that one of a panel's copies gives, counted once for each panel and size. */
function counter(): Gives {
  const known = new Map<Panel, Map<Extent, number>>()
  return (panel, piece) => {
    const bySize = known.get(panel) ?? new Map<Extent, number>()
    known.set(panel, bySize)
    const gives = bySize.get(piece) ?? pieceCount({ ...panel, count: 1 }, piece)
    bySize.set(piece, gives)
    return gives
  }
}

/**
 * Largest pieces first; garments with one whole graphic give them first. A panel is cut for one size
 * only, so the count is a floor: a planner finds as much or more.
 */
function supply(
  garments: readonly Supplier[],
  wanted: readonly SizeTally[],
  gives: Gives,
): SizeTally[] {
  let left = garments
    .toSorted((a, b) => Number(isSingle(b)) - Number(isSingle(a)))
    .flatMap(({ panels }) => panels.flatMap((panel) => Array<Panel>(panel.count).fill(panel)))
  return wanted.map((size) => {
    let have = 0
    left = left.filter((panel) => {
      if (have >= size.want) return true
      const given = gives(panel, size.size)
      have += given
      return given === 0
    })
    return { ...size, have: Math.min(have, size.want) }
  })
}

const isSingle = ({ facts }: Supplier): boolean => facts.pattern === 'single'

const filled = (pieces: readonly SizeTally[]): boolean =>
  pieces.every(({ want, have }) => have >= want)

/** Asked for no more than this: beyond it the pile and the quilt do not belong together. */
const mostMore = 99

function moreLike(
  one: Supplier,
  have: readonly Supplier[],
  wanted: readonly SizeTally[],
  gives: Gives,
): number {
  const enoughWith = (n: number) =>
    filled(supply([...have, ...Array<Supplier>(n).fill(one)], wanted, gives))
  if (enoughWith(0)) return 0
  if (!enoughWith(mostMore)) return mostMore
  let [short, enough] = [0, mostMore]
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
  gives: Gives,
  least: number,
): number {
  const cloth = ({ size, want }: SizeTally) => size.w * size.h * want
  const main = wanted.reduce((most, one) => (cloth(one) > cloth(most) ? one : most))
  const share = main.want / least
  return garments.reduce((sum, { panels }) => {
    const given = panels.reduce((all, panel) => all + panel.count * gives(panel, main.size), 0)
    return sum + Math.min(1, given / share)
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
  const gives = counter()
  const pieces = supply(suits, wanted, gives)
  const { small, large } = anotherLike(suits)
  const low = moreLike(large, suits, wanted, gives)
  const least = layout.garments[size][0] * alike
  const varied = Math.ceil(least - variety(suits, wanted, gives, least) - 1e-9)
  return {
    good: good.length,
    maybe: garments.filter(({ grade }) => grade === 'eyes').length,
    home: garments.filter(({ grade }) => grade === 'home').length,
    suits: suits.length,
    pieces,
    more: { low, high: Math.max(low, moreLike(small, suits, wanted, gives), varied) },
    enough: filled(pieces),
  }
}
