import { panelsOf } from '../garment/panels.ts'
import type { GarmentChoices } from './choices.ts'
import type { Extent } from './layout.ts'
import { piecesOf } from './yield.ts'

type Kind = GarmentChoices['kind']
type Size = GarmentChoices['sizes'][number]

/** What garments give; each kind, size, wear and what is marked is counted once for each piece. */
export interface Supply {
  /** Square inches of cut pieces of a garment, for each way it may turn out; the likely one first. */
  readonly pieces: (garment: GarmentChoices, piece: Extent) => number[]
  /** Square inches of all panels. */
  readonly cloth: (kind: Kind, size: Size) => number
}

/** Asks once for each key. */
function once(): (key: unknown, ask: () => number) => number {
  const known = new Map<string, number>()
  return (key, ask) => {
    const text = JSON.stringify(key)
    const found = known.get(text) ?? ask()
    known.set(text, found)
    return found
  }
}

export function supplyCounter(): Supply {
  const counted = once()
  const measured = once()
  const areaOf = (
    { kind, spots }: GarmentChoices,
    size: Size,
    wear: GarmentChoices['wears'][number],
    piece: Extent,
  ) =>
    counted(
      [kind, size, wear, piece.w, piece.h, spots],
      () => piecesOf(panelsOf(kind, size, { wear }, spots), piece) * piece.w * piece.h,
    )
  return {
    pieces: (garment, piece) =>
      garment.used.flatMap((isUsed) =>
        garment.sizes.flatMap((size) =>
          garment.wears.map((wear) => (isUsed ? areaOf(garment, size, wear, piece) : 0)),
        ),
      ),
    cloth: (kind, size) =>
      measured([kind, size], () =>
        panelsOf(kind, size).reduce((sum, { w, h, count }) => sum + w * h * count, 0),
      ),
  }
}
