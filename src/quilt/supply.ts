import { panelsOf } from '../garment/panels.ts'
import type { GarmentChoices } from './choices.ts'
import { demand, type Extent, type Layout, type QuiltSize } from './layout.ts'
import { piecesOf } from './yield.ts'

/** Square inches of cut pieces a garment gives, for each way it may turn out; the likely one first. */
export type Supply = (garment: GarmentChoices, piece: Extent) => number[]

/** Counts each kind, size and wear once for each piece. */
export function supplyCounter(): Supply {
  const known = new Map<string, number>()
  const areaOf = (
    kind: GarmentChoices['kind'],
    size: GarmentChoices['sizes'][number],
    wear: GarmentChoices['wears'][number],
    piece: Extent,
  ): number => {
    const key = JSON.stringify([kind, size, wear, piece.w, piece.h])
    const found = known.get(key)
    if (found !== undefined) return found
    const area = piecesOf(panelsOf(kind, size, { wear }), piece) * piece.w * piece.h
    known.set(key, area)
    return area
  }
  return ({ kind, used, sizes, wears }, piece) =>
    used.flatMap((isUsed) =>
      sizes.flatMap((size) => wears.map((wear) => (isUsed ? areaOf(kind, size, wear, piece) : 0))),
    )
}

/** Square inches of cut pieces that a quilt takes, and the size of piece that takes most of them. */
export function wantedArea(layout: Layout, size: QuiltSize): { area: number; main: Extent } {
  const { pieces } = demand(layout, size)
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
