import type { Grade } from '../garment/grade.ts'
import type { LayoutFit } from '../garment/layout-fit.ts'
import type { Design } from '../quilt/design.ts'
import type { Layout, QuiltSize, Role } from '../quilt/layout.ts'
import { contrastWants, designsFor, pileFor, type QuiltWanted } from '../quilt/plan/from-quilt.ts'
import type { Pile as PileToPlan } from '../quilt/plan/instance.ts'
import type { ClothOfGarment } from './cloth-colours.ts'
import type { Garment, Pile } from './pile.ts'

/** Why a garment has no part in a plan: an answer or a person is awaited, it stays whole, or the layout does not suit it. */
export type Barred =
  | { readonly why: 'waits' | 'home' | 'declined' }
  | { readonly why: 'misfit'; readonly because: LayoutFit['why'] }

export interface LeftOut {
  readonly garment: Garment
  readonly barred: Barred
}

/** What is asked of the planning for a pile as it stands. */
export interface ToPlan {
  readonly layout: Layout
  readonly size: QuiltSize
  /** Null: no garment may be cut for this layout. */
  readonly pile: PileToPlan | null
  /** Of each quilt. */
  readonly designs: readonly Design[]
  /** Garments whose lightness nobody told: light and dark are not weighed for want of it. */
  readonly colourless: readonly number[]
  /** In the order of the pile's garments. */
  readonly used: readonly Garment[]
  readonly out: readonly LeftOut[]
}

/** How a garment stands: its grade, or what a person made of it. */
export type Standing = (garment: Garment) => Grade | 'declined' | null

const asGraded: Standing = ({ grading }) => grading?.grade ?? null

/** Null: it may be cut. What nobody has decided is never taken for decided. */
function barredOf(garment: Garment, standing: Standing, layout: string): Barred | null {
  const grade = standing(garment)
  if (grade === 'declined') return { why: 'declined' }
  if (grade === 'home') return { why: 'home' }
  if (!garment.grading || grade === null || grade === 'eyes') return { why: 'waits' }
  const fit = garment.grading.layouts.find((one) => one.layout === layout)
  return fit?.fits ? null : { why: 'misfit', because: fit?.why ?? 'needs-a-person' }
}

export interface Asked {
  readonly standing?: Standing
  readonly layout?: Layout
  readonly size?: QuiltSize
  /** Roles that a garment may play alone, by its number; the rest may play any. */
  readonly roles?: ReadonlyMap<number, readonly Role[]>
}

/** What a plan follows from: a pile, and the cloths of its garments where they are known. */
export interface Grounds {
  readonly pile: Pick<Pile, 'garments' | 'wish' | 'rates'>
  readonly cloths: readonly Pick<ClothOfGarment, 'garment' | 'value'>[]
}

/** A pile as the planning takes it, for its wish, unless asked otherwise. */
export function toPlan(
  { pile: { garments, wish, rates }, cloths }: Grounds,
  { standing = asGraded, layout = wish.layout, size = wish.size, roles }: Asked = {},
): ToPlan {
  const sorted = garments
    .filter(({ dropped }) => !dropped)
    .map((garment) => ({ garment, barred: barredOf(garment, standing, layout.id) }))
  const used = sorted.flatMap(({ garment, barred }) => (barred ? [] : [garment]))
  const out = sorted.flatMap(({ garment, barred }) => (barred ? [{ garment, barred }] : []))
  const values = new Map(cloths.map(({ garment, value }) => [garment, value]))
  const wanted: QuiltWanted = {
    layout,
    size,
    alike: wish.quilts,
    clothWidthIn: rates.cloth.usable_width_in,
    ...(wish.sharing && { sharing: wish.sharing }),
    garments: used.map(({ n, facts, told, panels, rest }) => ({
      id: n,
      facts,
      graphicIn: told.graphicInches,
      must: told.mustUse,
      L: values.get(n) ?? null,
      roles: roles?.get(n) ?? null,
      rest: rest?.includes(layout.id) ?? true,
      panels,
    })),
  }
  return {
    layout,
    size,
    pile: used.length === 0 ? null : pileFor(wanted),
    designs: designsFor(wanted),
    colourless: contrastWants(wanted).map(Number),
    used,
    out,
  }
}
