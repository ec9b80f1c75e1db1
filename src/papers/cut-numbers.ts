import { type Extent, two } from './cloth-marks.ts'
import type { Point } from './drawing.ts'
import { Taken } from './taken.ts'

/** A line across or down, mm, and the number that is to stand at it. */
export interface NumberedLine {
  readonly number: number
  readonly from: Point
  readonly to: Point
}

/** Where a number stands; `leader` is a thin line to what it belongs to, where that is not beside it. */
export interface PlacedNumber {
  readonly number: number
  readonly box: Extent
  readonly leader: readonly [Point, Point] | null
}

/** Room that numbers may take: the drawing's, and the panel's within it. */
export interface NumberRoom {
  readonly sheet: Extent
  readonly panel: Extent
  /** Never to be covered. */
  readonly fixed: readonly Extent[]
  /** Covered only where there is no other room. */
  readonly yielding: readonly Extent[]
  /** Height of the letters, mm. */
  readonly letters: number
}

const gap = 0.3
const air = 0.2
const step = 0.6
/** A number is looked for no further from its line, mm. */
const leaderLong = 16

const isWithin = (inner: Extent, outer: Extent): boolean =>
  inner.left >= outer.left &&
  inner.top >= outer.top &&
  inner.left + inner.w <= outer.left + outer.w &&
  inner.top + inner.h <= outer.top + outer.h

interface Pill {
  readonly w: number
  readonly h: number
}

const pillOf = (number: number, letters: number): Pill => ({
  w: String(number).length * letters * 0.6 + letters / 2,
  h: letters + 0.6,
})

const centred = ([x, y]: Point, { w, h }: Pill): Extent => ({
  left: x - w / 2,
  top: y - h / 2,
  w,
  h,
})

const boxOf = ({ from, to }: NumberedLine): Extent => ({
  left: Math.min(from[0], to[0]),
  top: Math.min(from[1], to[1]),
  w: Math.abs(to[0] - from[0]),
  h: Math.abs(to[1] - from[1]),
})

const isDown = ({ from, to }: NumberedLine): boolean => from[0] === to[0]

/** At an end that meets the panel's edge, outside of it; else along the line, from its start. */
function atLine(line: NumberedLine, { w, h }: Pill, panel: Extent): Point[] {
  const half = (isDown(line) ? h : w) / 2 + gap
  const axis = isDown(line) ? 1 : 0
  const [start, end] = [line.from[axis], line.to[axis]]
  const edge = axis === 1 ? panel.top : panel.left
  const long = axis === 1 ? panel.h : panel.w
  const at = (place: number): Point => (axis === 1 ? [line.from[0], place] : [place, line.from[1]])
  const points: Point[] = []
  if (Math.abs(start - edge) < 0.01) points.push(at(start - half))
  if (Math.abs(end - edge - long) < 0.01) points.push(at(end + half))
  for (let place = start + half; place <= end - half; place += step) points.push(at(place))
  return points
}

/** Places around the middle of a line, the nearest first. */
function* around(line: NumberedLine): Generator<Point> {
  const middle: Point = [(line.from[0] + line.to[0]) / 2, (line.from[1] + line.to[1]) / 2]
  for (let ring = 2; ring <= leaderLong; ring += 1) {
    for (let side = -ring; side <= ring; side += 1) {
      yield [middle[0] + side, middle[1] - ring]
      yield [middle[0] + side, middle[1] + ring]
      yield [middle[0] - ring, middle[1] + side]
      yield [middle[0] + ring, middle[1] + side]
    }
  }
}

const clamp = (value: number, low: number, high: number): number =>
  Math.min(Math.max(value, low), high)

/** From a number's box to its line, well within the line's ends. */
function leaderTo({ from, to }: NumberedLine, box: Extent): readonly [Point, Point] {
  const [x, y] = [box.left + box.w / 2, box.top + box.h / 2]
  const within = (place: number, a: number, b: number): number =>
    clamp(place, a + (b - a) * 0.3, b - (b - a) * 0.3)
  const end: Point = [within(x, from[0], to[0]), within(y, from[1], to[1])]
  const start: Point = [
    clamp(end[0], box.left, box.left + box.w),
    clamp(end[1], box.top, box.top + box.h),
  ]
  return [
    [two(start[0]), two(start[1])],
    [two(end[0]), two(end[1])],
  ]
}

/** Small boxes along a leader, short of its end, to see what it goes through. */
const trail = ([[x1, y1], [x2, y2]]: readonly [Point, Point]): Extent[] =>
  Array.from({ length: 12 }, (_, n) => ({
    left: x1 + ((x2 - x1) * n) / 13 - 0.1,
    top: y1 + ((y2 - y1) * n) / 13 - 0.1,
    w: 0.2,
    h: 0.2,
  }))

/**
 * Places every number at its line and clear of each other and of what is fixed, away from other lines
 * where there is room. What finds no room is left out: the caller draws larger, or writes smaller.
 */
export function placeNumbers(lines: readonly NumberedLine[], room: NumberRoom): PlacedNumber[] {
  const { sheet, panel, fixed, yielding, letters } = room
  const taken = new Taken(fixed)
  const yields = new Taken(yielding)
  const allLines = new Taken(lines.map(boxOf))

  const find = (line: NumberedLine): PlacedNumber | null => {
    const { number } = line
    const pill = pillOf(number, letters)
    const own = boxOf(line)
    const isFree = (box: Extent): boolean => isWithin(box, sheet) && !taken.meets(box, air)
    const isAlone = (box: Extent): boolean =>
      !allLines.meets(box, 0, (other) => sameLine(own, other))
    const isClear = (box: Extent): boolean => isFree(box) && !yields.meets(box, air)

    const along = atLine(line, pill, panel).map((point) => centred(point, pill))
    const best = along.find((box) => isClear(box) && isAlone(box))
    if (best) return { number, box: best, leader: null }
    let crossing: PlacedNumber | null = null
    for (const point of around(line)) {
      const box = centred(point, pill)
      if (!isClear(box) || !isAlone(box)) continue
      const leader = leaderTo(line, box)
      const led = { number, box, leader }
      if (trail(leader).every((one) => isAlone(one) && !taken.meets(one, 0))) return led
      crossing ??= led
    }
    const near = along.find(isClear) ?? along.find(isFree)
    return near ? { number, box: near, leader: null } : crossing
  }

  const long = ({ w, h }: Extent): number => w + h
  const placed: PlacedNumber[] = []
  for (const line of lines.toSorted((a, b) => long(boxOf(a)) - long(boxOf(b)))) {
    const found = find(line)
    if (!found) continue
    placed.push(found)
    taken.add(found.box)
  }
  return placed.sort((a, b) => a.number - b.number)
}

const sameLine = (a: Extent, b: Extent): boolean =>
  a.left === b.left && a.top === b.top && a.w === b.w && a.h === b.h
