import type { Drawing, Fill, Mark, Pen, Point } from '../drawing.ts'

/** The hand all drawings share: indigo outline, cloth fill, seams, and arrows of madder thread. */
export const outline = (d: string, fill?: Fill, width = 2): Mark => ({
  mark: 'path',
  d,
  stroke: 'ink',
  width,
  ...(fill && { fill }),
})

export const stitch = (d: string, width = 1.5): Mark => ({
  mark: 'path',
  d,
  stroke: 'seam',
  width,
})

export const dashed = (d: string, width = 1.5, dash: readonly number[] = [4, 3]): Mark => ({
  mark: 'path',
  d,
  stroke: 'ink',
  width,
  dash,
})

export const dot = (at: Point, r = 1.2): Mark => ({ mark: 'circle', at, r, fill: 'ink' })

export const box = (at: Point, w: number, h: number, pen: Pen, r = 0): Mark => ({
  mark: 'rect',
  at,
  w,
  h,
  r,
  ...pen,
})

const thread: Pen = { stroke: 'madder', width: 2.5 }

/** A stitched arrow of thread along a straight line; with `both`, a head at each end. */
export function arrow(from: Point, to: Point, both = false): Mark[] {
  const shaft: Mark = { mark: 'line', from, to, ...thread, dash: [8, 6] }
  return [shaft, head(from, to), ...(both ? [head(to, from)] : [])]
}

function head(from: Point, to: Point, size = 10): Mark {
  const along = Math.atan2(to[1] - from[1], to[0] - from[0])
  const wing = (turn: number): Point => [
    round(to[0] - size * Math.cos(along + turn)),
    round(to[1] - size * Math.sin(along + turn)),
  ]
  return { mark: 'polyline', points: [wing(0.55), to, wing(-0.55)], ...thread }
}

/** A curved stitched arrow; its head looks from `before` to the curve's end. */
export const curvedArrow = (d: string, before: Point, end: Point): Mark[] => [
  { mark: 'path', d, ...thread, dash: [8, 6] },
  head(before, end),
]

/** Two stitches across: "do not". */
export const crossed = (left: number, top: number, right: number, bottom: number): Mark[] => [
  { mark: 'line', from: [left, top], to: [right, bottom], stroke: 'madder', width: 4 },
  { mark: 'line', from: [right, top], to: [left, bottom], stroke: 'madder', width: 4 },
]

const round = (n: number): number => Math.round(n * 10) / 10

/** A small square drawing: a sign or a silhouette. */
export const small = (...marks: Mark[]): Drawing => ({ width: 64, height: 64, unit: 'pt', marks })

/** A wide drawing beside a question. */
export const wide = (height: number, ...marks: Mark[]): Drawing => ({
  width: 400,
  height,
  unit: 'pt',
  marks,
})
