import type { Pile } from './instance.ts'
import type { Section } from './plan.ts'

/** A strip across bought cloth, filled as far as it can be. */
export interface StripPattern {
  readonly height: number
  /** Pieces of each size of the pile. */
  readonly counts: readonly number[]
  readonly sections: readonly Section[]
}

export interface Strips {
  readonly patterns: readonly StripPattern[]
  /** False where there were too many ways to look at all of them. */
  readonly complete: boolean
}

/** More ways than this for one role are not looked at. */
const mostPatterns = 4000

/** Both ways a piece may lie, once where it is square. */
function waysOf({ sizes }: Pile, size: number): { w: number; h: number }[] {
  const { w, h, rot } = sizes[size]!
  return rot && w !== h
    ? [
        { w, h },
        { w: h, h: w },
      ]
    : [{ w, h }]
}

const covers = (a: StripPattern, b: StripPattern): boolean =>
  a.height <= b.height && a.counts.every((count, size) => count >= b.counts[size]!)

function undominated(all: readonly StripPattern[]): StripPattern[] {
  const total = ({ counts }: StripPattern) => counts.reduce((sum, count) => sum + count, 0)
  const kept: StripPattern[] = []
  for (const one of all.toSorted((a, b) => total(b) - total(a) || a.height - b.height)) {
    if (!kept.some((other) => covers(other, one))) kept.push(one)
  }
  return kept
}

/** Fills a strip with columns in every way that leaves no room for another; false: there were too many. */
function fill(
  height: number,
  columns: readonly Section[],
  width: number,
  wanted: readonly number[],
  found: (sections: readonly Section[], counts: readonly number[]) => boolean,
): boolean {
  const counts = wanted.map(() => 0)
  const sections: Section[] = []
  const isOfUse = ({ size }: Section) => counts[size]! < wanted[size]!

  function go(from: number, left: number): boolean {
    const isFull = !columns.some((column) => column.w <= left && isOfUse(column))
    if (isFull) return found([...sections], [...counts])
    for (let n = from; n < columns.length; n += 1) {
      const column = columns[n]!
      if (column.w > left || !isOfUse(column)) continue
      sections.push(column)
      counts[column.size]! += column.count
      const goesOn = go(n, left - column.w)
      counts[column.size]! -= column.count
      sections.pop()
      if (!goesOn) return false
    }
    return true
  }
  return height === 0 || go(0, width)
}

/** All strips worth cutting for a role: each as high as one of its pieces, laid one way or the other. */
export function stripsFor(pile: Pile, role: number): Strips {
  const { width } = pile.cloth
  const wanted = pile.demand.map((row) => row[role]!)
  const ways = wanted.flatMap((count, size) =>
    count > 0 ? waysOf(pile, size).map((way) => ({ size, ...way })) : [],
  )
  const all: StripPattern[] = []
  let complete = true
  for (const height of [...new Set(ways.map(({ h }) => h))].sort((a, b) => a - b)) {
    const columns = ways
      .filter(({ w, h }) => w <= width && h <= height)
      .map((way) => ({ ...way, count: Math.floor(height / way.h) }))
      .sort((a, b) => b.w - a.w)
    if (columns.length === 0) continue
    const most = all.length + mostPatterns
    const wasAll = fill(height, columns, width, wanted, (sections, counts) => {
      all.push({
        height,
        sections,
        counts: counts.map((count, size) => Math.min(count, wanted[size]!)),
      })
      return all.length < most
    })
    complete &&= wasAll
  }
  return { patterns: undominated(all), complete }
}
