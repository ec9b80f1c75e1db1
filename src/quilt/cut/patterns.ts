import { blocksOf } from './blocks.ts'
import { listed, VectorFronts, type Vectors } from './fronts.ts'
import { type CutList, listFor } from './list.ts'
import type { Box, PanelToCut } from './panel.ts'
import { CutTree, type Rect } from './tree.ts'

/** One way to cut a panel: how many of each size, and the cuts that make them. */
export interface Pattern extends CutList {
  /** With a feature the last entry says whether its block is there. */
  readonly counts: readonly number[]
}

const covers = (a: readonly number[], b: readonly number[]): boolean =>
  a.every((count, size) => count >= b[size]!)

/** The vectors that no other one covers, each once, descending lexicographically. */
function undominated<T extends { readonly counts: readonly number[] }>(all: readonly T[]): T[] {
  const total = (one: T): number => one.counts.reduce((sum, count) => sum + count, 0)
  const kept: T[] = []
  for (const one of all.toSorted((a, b) => total(b) - total(a))) {
    if (!kept.some(({ counts }) => covers(counts, one.counts))) kept.push(one)
  }
  return kept.sort((a, b) => {
    const at = a.counts.findIndex((count, size) => count !== b.counts[size])
    return at < 0 ? 0 : b.counts[at]! - a.counts[at]!
  })
}

/** Bounds that the panel could go beyond; undefined where its cloth alone keeps every count below. */
function bindingBounds({ W, H, pieces, bounds }: PanelToCut): readonly number[] | undefined {
  const binds = bounds?.some((bound, size) => {
    const { w, h } = pieces[size]!
    return Math.floor((W * H) / (w * h)) > bound
  })
  return binds ? bounds : undefined
}

interface Found {
  readonly counts: readonly number[]
  readonly tree: CutTree<Vectors>
}

function undominatedIn(panel: PanelToCut): Found[] {
  const { W, H, pieces, defects, feature } = panel
  const fronts = new VectorFronts(pieces.length, bindingBounds(panel))
  const whole: Rect = [0, 0, W, H]
  const graphic: Box[] = feature
    ? [{ x: feature.gx, y: feature.gy, w: feature.gw, h: feature.gh }]
    : []
  const without = new CutTree(panel, fronts, { defects: [...defects, ...graphic], block: null })
  const around = blocksOf(panel).map(
    (block) => new CutTree(panel, fronts, { defects, block }, without),
  )
  const trees = [...(feature?.required ? [] : [without]), ...around]
  const found = trees.flatMap((tree) =>
    listed(tree.frontOf(whole)).map((counts) => ({
      counts: feature ? [...counts, tree.holdsBlock(whole) ? 1 : 0] : counts,
      tree,
    })),
  )
  return trees.length === 1 ? found : undominated(found)
}

/** The counts of all undominated ways to cut a panel, descending lexicographically; no lists of cuts. */
export const patternCounts = (panel: PanelToCut): (readonly number[])[] =>
  undominatedIn(panel).map(({ counts }) => counts)

/**
 * All undominated ways to cut a panel by straight cuts right across what is left, each with one list of
 * cuts. Empty where a required graphic's block has no place. Whole quarter inches.
 */
export function patterns(panel: PanelToCut): Pattern[] {
  const { W, H, pieces } = panel
  const bounds = bindingBounds(panel)
  return undominatedIn(panel).map(({ counts, tree }) => ({
    counts,
    ...listFor(tree, [0, 0, W, H], counts.slice(0, pieces.length), bounds),
  }))
}
