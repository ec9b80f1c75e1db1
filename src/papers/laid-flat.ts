import type { Panel, Rect } from '../garment/panels.ts'
import { type Extent, hatched, two, upArrow } from './cloth-marks.ts'
import type { Drawing, Mark } from './drawing.ts'

/** The words under one panel, and how it is cut out. */
export interface NamedPanel {
  readonly panel: Panel
  /** "Front · 2 alike", then "18 × 27 1/2 in". */
  readonly name: string
  readonly measure: string
}

/** Room on the page, mm. */
const room = { w: 180, h: 43 }
const letters = 2.9
/** The garment's cloth around a panel that its seams take, inches. For the eye only. */
const seam = 0.75
const gap = 4

/** Widest the words run, mm: a letter is taken for 0.6 of its height, as everywhere. */
const wordsWide = ({ name, measure }: NamedPanel): number =>
  Math.max(name.length, measure.length) * letters * 0.6

interface Corners {
  readonly topLeft?: Rect
  readonly topRight?: Rect
  readonly bottomLeft?: Rect
  readonly bottomRight?: Rect
  readonly neck?: Rect
}

/** Armholes, necklines and leg openings are hollow; a sleeve's cap and a leg's taper run straight. */
const isHollow = ({ name }: Panel): boolean =>
  name === 'front' || name === 'back' || name === 'half-front'

/** Which defects shape the panel's edge; the rest lie within it. */
function cornersOf(panel: Panel): Corners {
  const { w, h, defects } = panel
  const narrow = defects.filter((one) => one.w < w)
  const left = narrow.filter(({ x }) => x === 0)
  const right = narrow.filter((one) => one.x > 0 && one.x + one.w >= w)
  const top = (one: Rect) => one.y === 0
  const bottom = (one: Rect) => one.y > 0 && one.y + one.h >= h - 0.26
  // A body's neckline stands before what else begins at its top: a placket, a zip.
  const neck = isHollow(panel)
    ? narrow.find((one) => top(one) && one.x > 0 && one.x + one.w < w)
    : undefined
  const found = {
    topLeft: left.find(top),
    topRight: right.find(top),
    bottomLeft: left.find(bottom),
    bottomRight: right.find(bottom),
    neck,
  }
  return Object.fromEntries(Object.entries(found).filter(([, one]) => one)) as Corners
}

/** The panel's edge as a path, its corners cut away, widened by `over` inches all round. */
function edge(panel: Panel, { left, top }: Extent, scale: number, over: number): string {
  const { w, h } = panel
  const { topLeft, topRight, bottomLeft, bottomRight, neck } = cornersOf(panel)
  const at = (x: number, y: number): string => `${two(left + x * scale)} ${two(top + y * scale)}`
  const [l, t, r, b] = [-over, -over, w + over, h + over]
  const turn = (cx: number, cy: number, to: string, from: string): string =>
    isHollow(panel) ? `Q${at(cx, cy)} ${to}` : `L${from} L${to}`
  const parts = [topLeft ? `M${at(topLeft.w - over, t)}` : `M${at(l, t)}`]
  if (neck) {
    parts.push(`L${at(neck.x + over, t)}`)
    parts.push(`Q${at(neck.x + neck.w / 2, 2 * neck.h - over)} ${at(neck.x + neck.w - over, t)}`)
  }
  if (topRight) {
    parts.push(`L${at(topRight.x + over, t)}`)
    const to = at(r, topRight.h - over)
    parts.push(turn(topRight.x + over, topRight.h - over, to, at(topRight.x + over, t)))
  } else parts.push(`L${at(r, t)}`)
  if (bottomRight) {
    parts.push(`L${at(r, bottomRight.y + over)}`)
    const to = at(bottomRight.x + over, b)
    parts.push(turn(bottomRight.x + over, bottomRight.y + over, to, at(r, bottomRight.y + over)))
  } else parts.push(`L${at(r, b)}`)
  if (bottomLeft) {
    parts.push(`L${at(bottomLeft.w - over, b)}`)
    const to = at(l, bottomLeft.y + over)
    parts.push(turn(bottomLeft.w - over, bottomLeft.y + over, to, at(bottomLeft.w - over, b)))
  } else parts.push(`L${at(l, b)}`)
  if (topLeft) {
    parts.push(`L${at(l, topLeft.h - over)}`)
    const to = at(topLeft.w - over, t)
    parts.push(turn(topLeft.w - over, topLeft.h - over, to, at(l, topLeft.h - over)))
  }
  return `${parts.join(' ')} Z`
}

function drawn({ panel, name, measure }: NamedPanel, slot: Extent, scale: number): Mark[] {
  const w = panel.w * scale
  const at: Extent = {
    left: slot.left + (slot.w - w) / 2,
    top: slot.top + seam * scale,
    w,
    h: panel.h * scale,
  }
  const middle = slot.left + slot.w / 2
  const words = (text: string, line: number, bold: boolean): Mark => ({
    mark: 'text',
    at: [two(middle), two(slot.top + slot.h + line * letters * 1.25)],
    size: letters,
    anchor: 'middle',
    words: text,
    bold,
  })
  const lost = panel.defects.flatMap(({ x, y, ...one }) =>
    hatched({
      left: at.left + x * scale,
      top: at.top + y * scale,
      w: Math.min(one.w, panel.w - x) * scale,
      h: Math.min(one.h, panel.h - y) * scale,
    }),
  )
  return [
    { mark: 'path', d: edge(panel, at, scale, seam), stroke: 'ink', width: 0.45, fill: 'cloth' },
    ...lost,
    {
      mark: 'path',
      d: edge(panel, at, scale, 0),
      stroke: 'madder',
      width: 0.5,
      dash: [1.8, 1.2],
    },
    ...upArrow(at.left + w / 2, at.top + at.h * 0.59, Math.min(6, at.h * 0.14)),
    words(name, 1, true),
    words(measure, 2, false),
  ]
}

/**
 * A garment's parts laid flat side by side, to one scale, in mm: with their seams, where the blade goes,
 * and hatched what gives no piece.
 */
export function laidFlat(panels: readonly NamedPanel[]): Drawing {
  const wordsHigh = 3 * letters
  const tall = Math.max(...panels.map(({ panel }) => panel.h)) + 2 * seam
  const wide = (scale: number): number =>
    panels.reduce((sum, one) => sum + slotWide(one, scale) + gap, -gap)
  const slotWide = (one: NamedPanel, scale: number): number =>
    Math.max((one.panel.w + 2 * seam) * scale, wordsWide(one))
  const least = 0.2
  let scale = Math.min((room.h - wordsHigh) / tall, 3)
  while (wide(scale) > room.w - 2 && scale > least) scale *= 0.98

  const high = tall * scale
  let left = (room.w - wide(scale)) / 2
  const marks = panels.flatMap((one) => {
    const w = slotWide(one, scale)
    const own = (one.panel.h + 2 * seam) * scale
    const slot: Extent = { left, top: 1 + high - own, w, h: own }
    left += w + gap
    return drawn(one, slot, scale)
  })
  return { width: room.w, height: two(high + wordsHigh + 1), unit: 'mm', marks }
}
