import type { PanelToCut, PieceSize } from '../cut/panel.ts'
import { type Pattern, patternCounts, patterns } from '../cut/patterns.ts'
import { pieceCount } from '../yield.ts'
import type { PanelsAlike, Pile, PileGarment } from './instance.ts'
import { rolesOf } from './limits.ts'

/** Sizes that the garment could give to anybody; of the others 0 are wanted. */
const boundsOf = (pile: Pile, garment: PileGarment): number[] => {
  const roles = rolesOf(pile, garment)
  return pile.demand.map((row) => roles.reduce((sum, role) => sum + row[role]!, 0))
}

/** A panel as the cutting programme takes it, for those of the pile's sizes that are named. */
function toCut(
  pile: Pile,
  { W, H, defects, upright, picture }: PanelsAlike,
  sizes: readonly number[],
  bounds: readonly number[],
): PanelToCut {
  const pieces = sizes.map((size) => pile.sizes[size]!)
  return {
    W,
    H,
    defects,
    pieces: upright ? pieces.map((piece) => ({ ...piece, rot: false })) : pieces,
    bounds: sizes.map((size) => bounds[size]!),
    feature: picture?.feature,
  }
}

/** Counts of the pile's sizes from counts of those that were cut; a picture's block is one of its size. */
const counted = (
  pile: Pile,
  { picture }: PanelsAlike,
  sizes: readonly number[],
  counts: readonly number[],
): number[] =>
  pile.sizes.map((_, size) => {
    const at = sizes.indexOf(size)
    const block = picture?.size === size ? counts[sizes.length]! : 0
    return (at < 0 ? 0 : counts[at]!) + block
  })

const wantedOf = (pile: Pile, bounds: readonly number[]): number[] =>
  [...pile.sizes.keys()].filter((size) => bounds[size]! > 0)

function patternsOf(pile: Pile, panel: PanelsAlike, bounds: readonly number[]) {
  const sizes = wantedOf(pile, bounds)
  if (sizes.length === 0) return [pile.sizes.map(() => 0)]
  const found = patternCounts(toCut(pile, panel, sizes, bounds))
  // A picture whose block has no place leaves its panel uncut.
  if (found.length === 0) return [pile.sizes.map(() => 0)]
  return found.map((counts) => counted(pile, panel, sizes, counts))
}

/** A way to cut a garment's panel that gives the counts of a plan, with its list of cuts. */
export interface PanelCutList {
  readonly panel: PanelToCut
  /** The pile's size of each piece of the panel; a picture's block is one more. */
  readonly sizes: readonly number[]
  readonly pattern: Pattern
}

/**
 * The list of cuts behind a plan's pattern, or of one that gives more, where the panel was looked at in a
 * hurry; null where the instance brought its own patterns.
 */
export function cutListOf(
  pile: Pile,
  garment: PileGarment,
  at: number,
  pattern: readonly number[],
): PanelCutList | null {
  const alike = garment.panels[at]!
  const bounds = boundsOf(pile, garment)
  const sizes = wantedOf(pile, bounds)
  if (sizes.length === 0) return null
  const panel = toCut(pile, alike, sizes, bounds)
  const all = patterns(panel).map((one) => ({
    one,
    gives: counted(pile, alike, sizes, one.counts),
  }))
  const exact = all.find(({ gives }) => gives.join() === pattern.join())
  const covers = (gives: readonly number[]) => gives.every((count, size) => count >= pattern[size]!)
  const found = (exact ?? all.find(({ gives }) => covers(gives)))?.one
  return found ? { panel, sizes, pattern: found } : null
}

/**
 * Some ways to cut a panel, one for each size, for when there is no time to find all: bands right across
 * or right down it. They can be cut; better ones are not looked for.
 */
function hurriedPatterns(pile: Pile, panel: PanelsAlike, bounds: readonly number[]): number[][] {
  const none = pile.sizes.map(() => 0)
  if (panel.picture) return [none]
  const cloth = { w: panel.W, h: panel.H, count: 1, defects: panel.defects }
  const most = ({ w, h, rot }: PieceSize): number =>
    Math.max(
      pieceCount(cloth, { w, h }),
      rot && !panel.upright ? pieceCount(cloth, { w: h, h: w }) : 0,
    )
  const found = wantedOf(pile, bounds).map((size) =>
    none.map((_, k) => (k === size ? Math.min(bounds[size]!, most(pile.sizes[size]!)) : 0)),
  )
  return found.length > 0 ? found : [none]
}

export interface Looking {
  /** Patterns found before, and those found now. */
  readonly known: Map<string, readonly (readonly number[])[]>
  /** From then on panels that are not known are looked at in a hurry. */
  readonly isLate: () => boolean
}

export interface LookedAt {
  readonly pile: Pile
  /** Every panel was looked at whole: a proof of the plan is one. */
  readonly complete: boolean
}

/** Every panel with its patterns; panels alike are looked at once. */
export function lookedAt(pile: Pile, { known, isLate }: Looking): LookedAt {
  let complete = true
  const of = (panel: PanelsAlike, bounds: readonly number[]) => {
    const { W, H, defects, upright, picture } = panel
    const key = JSON.stringify([W, H, defects, upright, picture, pile.sizes, bounds])
    const found = known.get(key)
    if (found) return found
    if (isLate()) {
      complete = false
      return hurriedPatterns(pile, panel, bounds)
    }
    const made = patternsOf(pile, panel, bounds)
    known.set(key, made)
    return made
  }
  const garments = pile.garments.map((garment) => ({
    ...garment,
    panels: garment.panels.map((panel) => ({
      ...panel,
      patterns: panel.patterns ?? of(panel, boundsOf(pile, garment)),
    })),
  }))
  return { pile: { ...pile, garments }, complete }
}
