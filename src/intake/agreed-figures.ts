import type { Estimate } from '../quilt/estimate.ts'
import type { LineCode, Range } from '../quilt/lines.ts'
import type { Garment, Pile } from './pile.ts'

/** A garment of a pile that was agreed, as it was then. */
export interface AgreedGarment {
  readonly n: number
  /** Null: it has none. */
  readonly name: string | null
  readonly kind: string
  readonly grade: string | null
}

/** A kept version in numbers, beside its words: what two versions are compared by. Minor units, ms UTC. */
export interface AgreedFigures {
  readonly garments: readonly AgreedGarment[]
  /** Null: there was no price. */
  readonly price: {
    readonly currency: string
    readonly lines: readonly { readonly code: LineCode; readonly minor: number }[]
    readonly total: Range
  } | null
  readonly quilt: { readonly layout: string; readonly size: string; readonly quilts: number }
  readonly needBy: number | null
}

const garmentOf = ({ n, name, facts, grading }: Garment): AgreedGarment => ({
  n,
  name,
  kind: facts.kind,
  grade: grading?.grade ?? null,
})

/** The figures of a pile that is confirmed at this price. */
export const figuresOf = (pile: Pile, estimate: Estimate | null): AgreedFigures => ({
  garments: pile.garments.filter(({ dropped }) => !dropped).map(garmentOf),
  price: estimate && {
    currency: estimate.currency,
    lines: estimate.lines.map(({ code, likely }) => ({ code, minor: likely })),
    total: estimate.total,
  },
  quilt: { layout: pile.wish.layout.id, size: pile.wish.size, quilts: pile.wish.quilts },
  needBy: pile.needBy,
})
