import { patternCounts } from '../cut/patterns.ts'
import type { PanelsAlike, Pile, PileGarment } from './instance.ts'
import { rolesOf } from './limits.ts'

/** Sizes that the garment could give to anybody; of the others 0 are wanted. */
const boundsOf = (pile: Pile, garment: PileGarment): number[] => {
  const roles = rolesOf(pile, garment)
  return pile.demand.map((row) => roles.reduce((sum, role) => sum + row[role]!, 0))
}

function patternsOf(pile: Pile, { W, H, defects }: PanelsAlike, bounds: readonly number[]) {
  const wanted = [...pile.sizes.keys()].filter((size) => bounds[size]! > 0)
  if (wanted.length === 0) return [pile.sizes.map(() => 0)]
  const found = patternCounts({
    W,
    H,
    defects,
    pieces: wanted.map((size) => pile.sizes[size]!),
    bounds: wanted.map((size) => bounds[size]!),
  })
  return found.map((counts) =>
    pile.sizes.map((_, size) => {
      const at = wanted.indexOf(size)
      return at < 0 ? 0 : counts[at]!
    }),
  )
}

/** Every panel with its patterns; panels alike are looked at once. */
export function withPatterns(pile: Pile): Pile {
  const known = new Map<string, readonly (readonly number[])[]>()
  const of = (panel: PanelsAlike, bounds: readonly number[]) => {
    const key = JSON.stringify([panel.W, panel.H, panel.defects, bounds])
    const found = known.get(key) ?? patternsOf(pile, panel, bounds)
    known.set(key, found)
    return found
  }
  return {
    ...pile,
    garments: pile.garments.map((garment) => ({
      ...garment,
      panels: garment.panels.map((panel) => ({
        ...panel,
        patterns: panel.patterns ?? of(panel, boundsOf(pile, garment)),
      })),
    })),
  }
}
