import type { Box, PanelToCut } from '../quilt/cut/panel.ts'
import type { Rect } from '../quilt/cut/tree.ts'
import { type Extent, hatched, two } from './cloth-marks.ts'
import type { NumberedLine, PlacedNumber } from './cut-numbers.ts'
import type { BenchCut, PanelCut } from './cut-order.ts'
import type { Mark, Pen, Point } from './drawing.ts'

/** Between the dots of what is left over, mm. */
const dots = 2.2

/** Where the panel lies in a drawing. */
export interface Place {
  readonly panel: Extent
  /** mm to the quarter inch */
  readonly scale: number
}

export const extentOf = ({ panel, scale }: Place, { x, y, w, h }: Box): Extent => ({
  left: panel.left + x * scale,
  top: panel.top + y * scale,
  w: w * scale,
  h: h * scale,
})

const boxOf = ([x1, y1, x2, y2]: Rect): Box => ({ x: x1, y: y1, w: x2 - x1, h: y2 - y1 })

/** What of a box lies on the panel; null where nothing does. */
function clipped({ x, y, w, h }: Box, { W, H }: PanelToCut): Box | null {
  const [left, top] = [Math.max(0, x), Math.max(0, y)]
  const [right, bottom] = [Math.min(W, x + w), Math.min(H, y + h)]
  return right > left && bottom > top ? { x: left, y: top, w: right - left, h: bottom - top } : null
}

const rectangle = ({ left, top, w, h }: Extent, pen: Pen, r = 0): Mark => ({
  mark: 'rect',
  at: [two(left), two(top)],
  w: two(w),
  h: two(h),
  r,
  ...pen,
})

/** Tinted and dotted, so that it is told from a piece in black and white too. */
function leftover(extent: Extent): Mark[] {
  const { left, top, w, h } = extent
  const inset = Math.min(dots / 2, w / 2)
  const rows: Mark[] = []
  for (let y = Math.min(dots / 2, h / 2); y < h; y += dots) {
    const from: Point = [two(left + inset), two(top + y)]
    const to: Point = [two(left + Math.max(w - inset, inset + 0.01)), two(top + y)]
    rows.push({ mark: 'line', from, to, stroke: 'seam', width: 0.5, dash: [0, dots] })
  }
  return [rectangle(extent, { fill: 'cloth' }), ...rows]
}

export function lineOf(
  { panel, scale }: Place,
  { number, way, at, rect: [x1, y1, x2, y2] }: BenchCut,
): NumberedLine {
  const point = (x: number, y: number): Point => [
    two(panel.left + x * scale),
    two(panel.top + y * scale),
  ]
  return way === 'V'
    ? { number, from: point(at, y1), to: point(at, y2) }
    : { number, from: point(x1, at), to: point(x2, at) }
}

export function numberMarks({ number, box, leader }: PlacedNumber, size: number): Mark[] {
  const middle: Point = [two(box.left + box.w / 2), two(box.top + box.h / 2 + size * 0.35)]
  const line: Mark[] = leader
    ? [{ mark: 'line', from: leader[0], to: leader[1], stroke: 'ink', width: 0.2 }]
    : []
  return [
    ...line,
    rectangle(box, { fill: 'paper', stroke: 'ink', width: 0.25 }, 1.2),
    {
      mark: 'text',
      at: middle,
      size,
      anchor: 'middle',
      words: String(number),
      bold: true,
    },
  ]
}

function graphicMarks({ panel, pattern }: PanelCut, place: Place): Mark[] {
  const { feature, pieces } = panel
  if (!feature) return []
  const { gx, gy, gw, gh } = feature
  const graphic = clipped({ x: gx, y: gy, w: gw, h: gh }, panel)
  const dotted: Pen = { stroke: 'ink', width: 0.4, dash: [0.1, 1.1] }
  return [
    ...(graphic ? [rectangle(extentOf(place, graphic), dotted, 1.5)] : []),
    ...pattern.items
      .filter(({ k }) => k === pieces.length)
      .map((block) => rectangle(extentOf(place, block), { stroke: 'ink', width: 0.7 })),
  ]
}

/** The cloth: what is left over, the pieces, what is lost, the graphic in its block. */
export function clothMarks(cut: PanelCut, place: Place): Mark[] {
  const { panel, pattern, order } = cut
  return [
    ...order.leftovers.flatMap((one) => leftover(extentOf(place, boxOf(one)))),
    ...pattern.items.map((piece) => rectangle(extentOf(place, piece), { fill: 'paper' })),
    ...panel.defects.flatMap((defect) => {
      const on = clipped(defect, panel)
      return on ? hatched(extentOf(place, on)) : []
    }),
    ...graphicMarks(cut, place),
  ]
}

/** The cuts, as the blade goes on all drawings of the bench, and the panel's edge. */
export const cutMarks = ({ order }: PanelCut, place: Place): Mark[] => [
  ...order.cuts.map((cut): Mark => {
    const { from, to } = lineOf(place, cut)
    return { mark: 'line', from, to, stroke: 'madder', width: 0.5, dash: [1.8, 1.2] }
  }),
  rectangle(place.panel, { stroke: 'ink', width: 0.6 }),
]
