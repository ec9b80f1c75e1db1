import { type Demand, demand, designOf, type Wanted } from './design.ts'
import type { Extent, Layout, QuiltSize } from './layout.ts'
import { seamsIn } from './thread.ts'

export interface Quilt {
  readonly layout: Layout
  readonly size: QuiltSize
}

/** A quilt that the pile may become, with what it takes. */
export interface Wish extends Quilt {
  readonly finished: Extent
  /** Pieces to cut. */
  readonly pieces: number
  /** Inches of seam in its top. */
  readonly seamsIn: number
  /** Of garments: square inches of cut pieces, and the size of piece that takes most of them. */
  readonly wanted: { readonly area: number; readonly main: Extent }
  /** Pieces that no garment gives. */
  readonly bought: readonly Wanted[]
}

function wantedArea(pieces: readonly Wanted[]): Wish['wanted'] {
  const bySize = new Map<string, { area: number; main: Extent }>()
  for (const { size: piece, count } of pieces) {
    const key = `${piece.w}x${piece.h}`
    const sum = bySize.get(key)?.area ?? 0
    bySize.set(key, { area: sum + count * piece.w * piece.h, main: piece })
  }
  const sums = [...bySize.values()]
  const { main } = sums.reduce((most, one) => (one.area > most.area ? one : most))
  return { area: sums.reduce((total, { area }) => total + area, 0), main }
}

const countOf = ({ pieces }: Demand): number => pieces.reduce((sum, { count }) => sum + count, 0)

/** What a quilt takes by its layout's plain design. */
export function wishFor({ layout, size }: Quilt): Wish {
  const takes = demand(designOf(layout, size, []))
  const isBought = ({ role }: Wanted) => layout.bought.includes(role)
  return {
    layout,
    size,
    finished: takes.finished,
    pieces: countOf(takes),
    seamsIn: seamsIn(layout, takes),
    wanted: wantedArea(takes.pieces.filter((piece) => !isBought(piece))),
    bought: takes.pieces.filter(isBought),
  }
}
