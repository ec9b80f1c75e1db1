import type { PanelToCut, PieceSize } from '../cut/panel.ts'
import { type Pattern, patternCounts, patterns } from '../cut/patterns.ts'
import { pieceCount } from '../yield.ts'
import type { PanelsAlike, Pile, PileGarment } from './instance.ts'
import { rolesOf } from './limits.ts'

/** A panel to be looked at, with all that its patterns follow from: equal ones have equal patterns. */
export interface PanelAsked {
  readonly panel: Omit<PanelsAlike, 'mult' | 'only' | 'patterns'>
  /** The sizes of its pile. */
  readonly sizes: readonly PieceSize[]
  /** No more of each size than this is of use. */
  readonly bounds: readonly number[]
}

/** Ways to cut a panel: counts of each size. */
export type Patterns = readonly (readonly number[])[]

/**
 * What is asked of a garment's panel. A bound is no larger than the panel's cloth reaches for, so that
 * piles that differ in what they want beyond it ask the same.
 */
export function panelAsked(pile: Pile, garment: PileGarment, at: number): PanelAsked {
  const { W, H, defects, upright, picture, only } = garment.panels[at]!
  const roles = rolesOf(pile, garment)
  const bound = (size: number): number => {
    const { w, h } = pile.sizes[size]!
    const wanted = roles.reduce((sum, role) => sum + pile.demand[size]![role]!, 0)
    return Math.min(wanted, Math.floor((W * H) / (w * h)))
  }
  const all = pile.sizes.map((_, size) => (only?.includes(size) === false ? 0 : bound(size)))
  // Where nothing else is wanted, a picture is looked for beside a piece of its own size.
  const alone = picture && all.every((one) => one === 0)
  const bounds = all.map((one, size) =>
    alone && size === picture.size ? Math.min(1, bound(size)) : one,
  )
  const panel = { W, H, defects, ...(upright && { upright }), ...(picture && { picture }) }
  return { panel, sizes: pile.sizes, bounds }
}

/** The panels of a pile that bring no patterns of their own. */
export const panelsAsked = (pile: Pile): PanelAsked[] =>
  pile.garments.flatMap((garment) =>
    [...garment.panels.keys()]
      .filter((at) => !garment.panels[at]!.patterns)
      .map((at) => panelAsked(pile, garment, at)),
  )

/** A panel as the cutting programme takes it, for those of the sizes that are named. */
function toCut({ panel, sizes, bounds }: PanelAsked, named: readonly number[]): PanelToCut {
  const { W, H, defects, upright, picture } = panel
  const pieces = named.map((size) => sizes[size]!)
  return {
    W,
    H,
    defects,
    pieces: upright ? pieces.map((piece) => ({ ...piece, rot: false })) : pieces,
    bounds: named.map((size) => bounds[size]!),
    feature: picture?.feature,
  }
}

/** Counts of the pile's sizes from counts of those that were cut; a picture's block is one of its size. */
const counted = (
  { panel: { picture }, sizes }: PanelAsked,
  named: readonly number[],
  counts: readonly number[],
): number[] =>
  sizes.map((_, size) => {
    const at = named.indexOf(size)
    const block = picture?.size === size ? counts[named.length]! : 0
    return (at < 0 ? 0 : counts[at]!) + block
  })

/** Places of the counts above zero. */
const above0 = (counts: readonly number[]): number[] =>
  [...counts.keys()].filter((size) => counts[size]! > 0)

/** Every way to cut a panel that no other one outdoes. Takes seconds where a panel is large. */
export function patternsOf(asked: PanelAsked): Patterns {
  const named = above0(asked.bounds)
  const none = [asked.sizes.map(() => 0)]
  if (named.length === 0) return none
  const found = patternCounts(toCut(asked, named))
  // A picture whose block has no place leaves its panel uncut.
  return found.length === 0 ? none : found.map((counts) => counted(asked, named, counts))
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
 * hurry; null where the instance brought its own patterns. Sizes that the pattern does not give are left
 * out of the search: a pattern that nothing outdoes is not outdone without them either.
 */
export function cutListOf(asked: PanelAsked, pattern: readonly number[]): PanelCutList | null {
  if (above0(pattern).length === 0) return null
  // A picture's block alone is of a size that is not cut beside it.
  const sizes = above0(pattern).filter((size) => asked.bounds[size]! > 0)
  const panel = toCut(asked, sizes)
  const all = patterns(panel).map((one) => ({ one, gives: counted(asked, sizes, one.counts) }))
  const exact = all.find(({ gives }) => gives.join() === pattern.join())
  const covers = (gives: readonly number[]) => gives.every((count, size) => count >= pattern[size]!)
  const found = (exact ?? all.find(({ gives }) => covers(gives)))?.one
  return found ? { panel, sizes, pattern: found } : null
}

/**
 * Some ways to cut a panel, one for each size, for when there is no time to find all: bands right across
 * or right down it. They can be cut; better ones are not looked for.
 */
function hurriedPatterns({ panel, sizes, bounds }: PanelAsked): Patterns {
  const none = sizes.map(() => 0)
  if (panel.picture) return [none]
  const cloth = { w: panel.W, h: panel.H, count: 1, defects: panel.defects }
  const most = ({ w, h, rot }: PieceSize): number =>
    Math.max(
      pieceCount(cloth, { w, h }),
      rot && !panel.upright ? pieceCount(cloth, { w: h, h: w }) : 0,
    )
  const found = above0(bounds).map((size) =>
    none.map((_, k) => (k === size ? Math.min(bounds[size]!, most(sizes[size]!)) : 0)),
  )
  return found.length > 0 ? found : [none]
}

/** The pile with the patterns that are known, by what is asked of each panel. */
export const withPatterns = (
  pile: Pile,
  known: (asked: PanelAsked) => Patterns | undefined,
): Pile => ({
  ...pile,
  garments: pile.garments.map((garment) => ({
    ...garment,
    panels: garment.panels.map((panel, at) => ({
      ...panel,
      patterns: panel.patterns ?? known(panelAsked(pile, garment, at)),
    })),
  })),
})

export interface LookedAt {
  /** Every panel has patterns. */
  readonly pile: Pile
  /** Panels that were looked at in a hurry: with none a proof of the plan is one. */
  readonly hurried: number
}

/** Looks in a hurry at the panels whose patterns are not known. */
export function inAHurry(pile: Pile): LookedAt {
  const hurried = panelsAsked(pile).length
  return { pile: withPatterns(pile, hurriedPatterns), hurried }
}
