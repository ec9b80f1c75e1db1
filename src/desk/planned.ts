import type { LayoutFit } from '../garment/layout-fit.ts'
import type { Knowledge } from '../intake/knowledge.ts'
import type { Garment } from '../intake/pile.ts'
import { pileFor } from '../quilt/plan/from-quilt.ts'
import type { Pile } from '../quilt/plan/instance.ts'
import { ratesAt } from '../quilt/rates.ts'
import { gradeDecided } from './consequences.ts'
import type { GarmentVerdict } from './decisions.ts'
import type { Review, ReviewedGarment } from './review.ts'

/** Why a garment has no part in a plan: a person decides first, it stays whole, or the layout does not suit it. */
export type Barred =
  | { readonly why: 'waits' | 'home' | 'declined' }
  | { readonly why: 'misfit'; readonly because: LayoutFit['why'] }

export interface LeftOut {
  readonly garment: Garment
  readonly barred: Barred
}

/** What is asked of the planning for a pile as it has been decided so far. */
export interface ToPlan {
  /** Null: no garment may be cut for this layout. */
  readonly pile: Pile | null
  /** In the order of the pile's garments. */
  readonly used: readonly Garment[]
  readonly out: readonly LeftOut[]
}

/** Null: it may be cut. What nobody has decided is never taken for decided. */
function barredOf({ garment, decisions }: ReviewedGarment, layout: string): Barred | null {
  const verdict = decisions.at(-1)?.verdict as GarmentVerdict | undefined
  const grade = verdict ? gradeDecided[verdict] : garment.grading?.grade
  if (verdict === 'decline') return { why: 'declined' }
  if (grade === 'home') return { why: 'home' }
  if (!garment.grading || !grade || grade === 'eyes') return { why: 'waits' }
  const fit = garment.grading.layouts.find((one) => one.layout === layout)
  return fit?.fits ? null : { why: 'misfit', because: fit?.why ?? 'needs-a-person' }
}

/** A reviewed pile as the planning takes it, with the cloth of the rates of the day it last changed. */
export function toPlan({ row, pile, garments }: Review, knowledge: Knowledge): ToPlan {
  const { layout, size, quilts } = pile.wish
  const sorted = garments.map((one) => ({
    garment: one.garment,
    barred: barredOf(one, layout.id),
  }))
  const used = sorted.flatMap(({ garment, barred }) => (barred ? [] : [garment]))
  const out = sorted.flatMap(({ garment, barred }) => (barred ? [{ garment, barred }] : []))
  if (used.length === 0) return { pile: null, used, out }
  const rates = ratesAt(knowledge.rates, new Date(row.changed_at).toISOString().slice(0, 10))
  return {
    pile: pileFor({
      layout,
      size,
      alike: quilts,
      clothWidthIn: rates.cloth.usable_width_in,
      garments: used.map(({ n, facts, told, panels }) => ({
        id: n,
        facts,
        graphicIn: told.graphicInches,
        must: told.mustUse,
        panels,
      })),
    }),
    used,
    out,
  }
}
