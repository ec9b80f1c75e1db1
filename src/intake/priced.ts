import type { Priced } from '../quilt/choices.ts'
import { type Estimate, estimate } from '../quilt/estimate.ts'
import type { Layout, QuiltSize } from '../quilt/layout.ts'
import type { Settled } from '../quilt/settled.ts'
import type { Garment, Pile, Wish } from './pile.ts'

/** A pile changed before it is priced. */
export interface Otherwise {
  /** Numbers of garments that are left out. */
  readonly without?: readonly number[]
  /** Garments more, each like one of the pile, by its number. */
  readonly more?: readonly { readonly n: number; readonly like: number }[]
  /** This quilt and no other; absent: every quilt the pile may still become. */
  readonly quilt?: { readonly layout: Layout; readonly size: QuiltSize }
}

/** Every quilt the pile may still become: the likely one first. */
function candidates(wish: Wish, layouts: readonly Layout[]) {
  const sizes: QuiltSize[] = wish.sizeChosen
    ? [wish.size]
    : [wish.size, ...(['crib', 'throw', 'twin'] as const).filter((size) => size !== wish.size)]
  const settings = wish.layoutChosen
    ? [wish.layout]
    : [wish.layout, ...layouts.filter(({ id }) => id !== wish.layout.id)]
  return settings.flatMap((layout) => sizes.map((size) => ({ layout, size })))
}

function toPrice({ n, dropped, grading, facts, told }: Garment): Priced[] {
  return dropped || !grading
    ? []
    : [{ n, kind: facts.kind, size: told.size, facts, spots: told.spots, grading }]
}

/** What a pile comes to, by what a plan of it settles where there is one; null: no garment is graded. */
export function priced(
  { garments, wish, rates }: Pick<Pile, 'garments' | 'wish' | 'rates'>,
  layouts: readonly Layout[],
  settled: Settled | null,
  { without = [], more = [], quilt }: Otherwise = {},
): Estimate | null {
  const all = garments.flatMap(toPrice)
  const left = all.filter(({ n }) => !without.includes(n))
  const added = more.map(({ n, like }) => ({ ...all.find((one) => one.n === like)!, n }))
  if (left.length + added.length === 0) return null
  return estimate({
    garments: [...left, ...added],
    quilts: quilt ? [quilt] : candidates(wish, layouts),
    alike: wish.quilts,
    rates,
    settled,
  })
}
