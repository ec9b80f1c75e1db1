import type { Capacity, PanelClass, PanelWay } from './capacity.ts'

/** A garment with more ways than these to be cut as a whole is left panel by panel. */
const mostTotals = 40
const mostSums = 1200

interface Total {
  readonly counts: readonly number[]
  readonly ways: readonly PanelWay[]
}

const sum = (counts: readonly number[]): number => counts.reduce((all, count) => all + count, 0)

const covers = (a: readonly number[], b: readonly number[]): boolean =>
  a.every((count, size) => count >= b[size]!)

function undominated(all: readonly Total[]): Total[] {
  const kept: Total[] = []
  for (const one of all.toSorted((a, b) => sum(b.counts) - sum(a.counts))) {
    if (!kept.some(({ counts }) => covers(counts, one.counts))) kept.push(one)
  }
  return kept
}

/** All that the panels give together, as far as it is of use; null where there is too much to list. */
function totalsOf(classes: readonly PanelClass[], most: readonly number[]): Total[] | null {
  let all: Total[] = [{ counts: most.map(() => 0), ways: [] }]
  for (const { members, patterns } of classes) {
    for (const { panel, mult, whole } of members) {
      for (let n = 0; n < mult; n += 1) {
        if (all.length * patterns.length > mostSums) return null
        const sums = all.flatMap(({ counts, ways }) =>
          patterns.map((more, k) => ({
            counts: counts.map((count, size) => Math.min(most[size]!, count + more[size]!)),
            ways: [...ways, { panel, whole: whole[k]!, counts: more }],
          })),
        )
        all = undominated(sums)
        if (all.length > mostTotals) return null
        // All that is of use is there: the panels left stay whole.
        if (all.length === 1 && covers(all[0]!.counts, most)) return all
      }
    }
  }
  return all
}

/**
 * The classes of a garment's panels, or one class that stands for all of them, where that has fewer
 * patterns: what a garment gives is capped, and most ways to cut it give more than that.
 */
export function classesInOne({ classes, ofSize }: Capacity): readonly PanelClass[] {
  const columns = sum(classes.map(({ patterns }) => (patterns.length > 1 ? patterns.length : 0)))
  if (columns === 0) return classes
  const totals = totalsOf(classes, ofSize)
  if (!totals || totals.length >= columns) return classes
  return [
    {
      members: [],
      mult: 1,
      patterns: totals.map(({ counts }) => counts),
      ways: totals.map(({ ways }) => ways),
    },
  ]
}
