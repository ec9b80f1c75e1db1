import { type Figure, practice } from '../base/figure.ts'
import type { Facts } from '../garment/facts.ts'
import { type GarmentSize, type Panel, panelsOf } from '../garment/panels.ts'
import type { Spot } from '../garment/spots.ts'
import type { Extent } from './layout.ts'

/** What is cut, in any one unit of length: `count` alike, none of it from the defects. */
interface Cloth {
  readonly w: number
  readonly h: number
  readonly count: number
  readonly defects: readonly Hole[]
}

interface Hole {
  readonly x: number
  readonly y: number
  readonly w: number
  readonly h: number
}

/** Free lengths of a band across the panel, from y to y + h, between the defects that reach into it. */
function freeRuns(panel: Cloth, y: number, h: number): number[] {
  const blocked = panel.defects
    .filter((defect) => defect.y < y + h && defect.y + defect.h > y)
    .toSorted((a, b) => a.x - b.x)
  const runs: number[] = []
  let from = 0
  for (const { x, w } of blocked) {
    runs.push(x - from)
    from = Math.max(from, x + w)
  }
  return [...runs, panel.w - from]
}

const inBand = (panel: Cloth, y: number, piece: Extent): number =>
  freeRuns(panel, y, piece.h).reduce((sum, run) => sum + Math.max(0, Math.floor(run / piece.w)), 0)

/**
 * Where a band may begin. Any other one can be slid up, losing nothing, until it meets the panel's
 * edge, the lower end of a defect, or another band.
 */
function bandStarts(panel: Cloth, height: number): number[] {
  const starts = new Set<number>()
  for (const from of [0, ...panel.defects.map(({ y, h }) => y + h)]) {
    for (let y = from; y + height <= panel.h; y += height) starts.add(y)
  }
  return [...starts].sort((a, b) => a - b)
}

/** The most pieces in bands cut right across the panel; `best[n]` is what lies below the nth start. */
function banded(panel: Cloth, piece: Extent): number {
  const starts = bandStarts(panel, piece.h)
  const best: number[] = []
  for (let n = starts.length - 1; n >= 0; n -= 1) {
    const y = starts[n]!
    const below = starts.findIndex((start) => start >= y + piece.h)
    const here = inBand(panel, y, piece) + (best[below] ?? 0)
    best[n] = Math.max(best[n + 1] ?? 0, here)
  }
  return best[0] ?? 0
}

const turned = ({ x, y, w, h, ...rect }: Hole): Hole => ({ ...rect, x: y, y: x, w: h, h: w })

const turnedPanel = (panel: Cloth): Cloth => ({
  ...panel,
  w: panel.h,
  h: panel.w,
  defects: panel.defects.map(turned),
})

/**
 * How many upright pieces (inches) a panel surely gives: bands right across it, or right down it,
 * each cut into pieces beside the defects. A careful cutter may find more, never fewer.
 */
export const pieceCount = (panel: Cloth, piece: Extent): number =>
  panel.count *
  Math.max(banded(panel, piece), banded(turnedPanel(panel), { w: piece.h, h: piece.w }))

export const piecesOf = (panels: readonly Panel[], piece: Extent): number =>
  panels.reduce((sum, panel) => sum + pieceCount(panel, piece), 0)

/** The trade's common small square, by which a garment's yield is told, inches. */
export const yardstick: Extent = { w: 5, h: 5 }

/** From here on a garment gives enough; a baby's suit gives two to four. Common practice, no source. */
export const enoughFrom = 6

export const yieldFigures: readonly Figure[] = [
  { figure: 'yield/small square', value: yardstick, unit: 'in', source: practice },
  { figure: 'yield/enough from', value: enoughFrom, unit: 'pieces', source: practice },
]

export function yieldOf(count: number): Facts['yield'] {
  if (count === 0) return 'none'
  return count < enoughFrom ? 'few' : 'enough'
}

/** The fact `yield` from kind, size, wear and marked spots; `unknown` where only measuring tells. */
export function yieldFact(
  kind: Facts['kind'],
  size: GarmentSize,
  facts: Pick<Facts, 'wear'>,
  spots: readonly Spot[] = [],
): Facts['yield'] {
  const panels = panelsOf(kind, size, facts, spots)
  return panels.length === 0 ? 'unknown' : yieldOf(piecesOf(panels, yardstick))
}
