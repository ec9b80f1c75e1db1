import { blocksOf } from './blocks.ts'
import { listed, VectorFronts } from './fronts.ts'
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

/**
 * All undominated ways to cut a panel by straight cuts right across what is left, each with one list of
 * cuts. Empty where a required graphic's block has no place. Whole quarter inches.
 */
export function patterns(panel: PanelToCut): Pattern[] {
  const { W, H, pieces, defects, feature, bounds } = panel
  const fronts = new VectorFronts(pieces.length, bounds)
  const all: Rect = [0, 0, W, H]
  const graphic: Box[] = feature
    ? [{ x: feature.gx, y: feature.gy, w: feature.gw, h: feature.gh }]
    : []
  const without = new CutTree(panel, fronts, { defects: [...defects, ...graphic], block: null })
  const around = blocksOf(panel).map(
    (block) => new CutTree(panel, fronts, { defects, block }, without),
  )
  const found = [...(feature?.required ? [] : [without]), ...around].flatMap((tree) =>
    listed(tree.frontOf(all)).map((counts) => ({
      counts: feature ? [...counts, tree.holdsBlock(all) ? 1 : 0] : counts,
      tree,
    })),
  )
  return undominated(found).map(({ counts, tree }) => ({
    counts,
    ...listFor(tree, all, counts.slice(0, pieces.length), bounds),
  }))
}
