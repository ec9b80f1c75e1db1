import { type Point as Corner, hull } from '../hull.ts'
import type { Point, Slab } from './picture.ts'

/** For each pixel of a grid how likely it lies within a line of words, 0 to 1. */
export interface Likelihood {
  readonly width: number
  readonly height: number
  readonly data: Float32Array
}

/** A line of words, and the middle of what was found of it at each place across; right where it runs across. */
export interface FoundLine extends Slab {
  readonly spine: readonly Point[]
}

/** Figures of the network's own makers (PP-OCR, from memory), the mean softened for woven labels. */
const likely = 0.3
const likelyOnAverage = 0.5
/** What is found is the heart of a line; the line reaches beyond it by its area × this ÷ its girth. */
const beyond = 1.6
/** Pixels of the grid: less is a speck. */
const leastSide = 3

/** Lines of words as slabs on the grid: each lies along its line, so `w` is not less than `h`. */
export function slabsIn(map: Likelihood): FoundLine[] {
  const lines: FoundLine[] = []
  for (const { rows, columns, mean } of patches(map)) {
    if (mean < likelyOnAverage) continue
    const slab = leastSlab(hull(cornersOf(rows)))
    if (Math.min(slab.w, slab.h) < leastSide) continue
    const spine = [...columns].map(([x, [top, bottom]]) => ({
      x: x + 0.5,
      y: (top + bottom + 1) / 2,
    }))
    lines.push({ ...grown(slab), spine })
  }
  return lines
}

/** The first and the last pixel of each row, or of each column. */
type Ends = Map<number, [first: number, last: number]>

interface Patch {
  readonly rows: Ends
  readonly columns: Ends
  readonly mean: number
}

function stretch(ends: Ends, at: number, value: number): void {
  const known = ends.get(at)
  if (!known) ends.set(at, [value, value])
  else if (value < known[0]) known[0] = value
  else if (value > known[1]) known[1] = value
}

/** The corners of a patch's outermost pixels: their hull is that of all. */
const cornersOf = (rows: Ends): Corner[] =>
  [...rows].flatMap(([y, [left, right]]): Corner[] => [
    [left, y],
    [left, y + 1],
    [right + 1, y],
    [right + 1, y + 1],
  ])

/** Pixels that hang together, side by side or corner to corner. */
function patches({ width, height, data }: Likelihood): Patch[] {
  const seen = new Uint8Array(width * height)
  const found: Patch[] = []
  const stack: number[] = []
  for (let start = 0; start < data.length; start += 1) {
    if (seen[start] || data[start]! <= likely) continue
    const [rows, columns]: [Ends, Ends] = [new Map(), new Map()]
    let [sum, count] = [0, 0]
    seen[start] = 1
    stack.push(start)
    for (let at = stack.pop(); at !== undefined; at = stack.pop()) {
      const y = Math.floor(at / width)
      const x = at - y * width
      sum += data[at]!
      count += 1
      stretch(rows, y, x)
      stretch(columns, x, y)
      for (let ny = Math.max(0, y - 1); ny <= Math.min(height - 1, y + 1); ny += 1) {
        for (let nx = Math.max(0, x - 1); nx <= Math.min(width - 1, x + 1); nx += 1) {
          const next = ny * width + nx
          if (seen[next] || data[next]! <= likely) continue
          seen[next] = 1
          stack.push(next)
        }
      }
    }
    found.push({ rows, columns, mean: sum / count })
  }
  return found
}

/** The slab of least area around a hull: one of its sides lies along one of the hull's. */
function leastSlab(corners: readonly Corner[]): Slab {
  let best: Slab | null = null
  for (const [n, a] of corners.entries()) {
    const b = corners[(n + 1) % corners.length]!
    const turn = Math.atan2(b[1] - a[1], b[0] - a[0])
    const slab = slabAt(corners, turn)
    if (!best || slab.w * slab.h < best.w * best.h) best = slab
  }
  return alongItsLine(best!)
}

function slabAt(corners: readonly Corner[], turn: number): Slab {
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
  const us = corners.map(([x, y]) => x * cos + y * sin)
  const vs = corners.map(([x, y]) => y * cos - x * sin)
  const [u1, u2] = [Math.min(...us), Math.max(...us)]
  const [v1, v2] = [Math.min(...vs), Math.max(...vs)]
  const [u, v] = [(u1 + u2) / 2, (v1 + v2) / 2]
  return { x: u * cos - v * sin, y: u * sin + v * cos, w: u2 - u1, h: v2 - v1, turn }
}

/** The same slab with `w` its longer side, turned by −90° to 90°. */
function alongItsLine(slab: Slab): Slab {
  const { w, h, turn } = slab
  const [long, short, along] = w >= h ? [w, h, turn] : [h, w, turn + Math.PI / 2]
  return { ...slab, w: long, h: short, turn: along - Math.PI * Math.round(along / Math.PI) }
}

function grown(slab: Slab): Slab {
  const by = (slab.w * slab.h * beyond) / (2 * (slab.w + slab.h))
  return { ...slab, w: slab.w + 2 * by, h: slab.h + 2 * by }
}
