import type { Reach } from './sums.ts'

type Span = readonly [start: number, end: number]

/** One side of a rectangle, from `near` to `far`, and where along it defects and a block lie. */
export interface Side {
  readonly near: number
  readonly far: number
  readonly reach: Reach
  /** Those that meet the rectangle; they may reach beyond it. */
  readonly defects: readonly Span[]
  /** A graphic's block, whole within the rectangle. */
  readonly block: Span | null
}

const isClear = ({ defects, block }: Side): boolean => defects.length === 0 && !block

/** The last place where a piece can end that was pushed towards the near side. */
function lastPlace({ near, far, reach: { floor }, defects, block }: Side): number {
  let last = near + floor[far - near]!
  for (const [, end] of defects) {
    if (end >= near && end <= far) last = Math.max(last, end + floor[far - end]!)
  }
  return block ? Math.max(last, block[1] + floor[far - block[1]]!) : last
}

/** The first place where a piece can begin that was pushed towards the far side. */
function firstPlace({ near, far, reach: { floor }, defects, block }: Side): number {
  let first = far - floor[far - near]!
  for (const [start] of defects) {
    if (start >= near && start <= far) first = Math.min(first, start - floor[start - near]!)
  }
  return block ? Math.min(first, block[0] - floor[block[0] - near]!) : first
}

/** Where a strip at an end of the side can be cut off in which no piece need lie; which end is kept. */
export function idleEnd(side: Side): { readonly at: number; readonly keeps: 0 | 1 } | null {
  const { near, far } = side
  const last = lastPlace(side)
  if (last > near && last < far) return { at: last, keeps: 0 }
  if (isClear(side)) return null
  const first = firstPlace(side)
  return first > near && first < far ? { at: first, keeps: 1 } : null
}

/** Finds the places along sides of up to `longest` at which a cut may matter. */
export class Places {
  /** By distance from the near side: a piece that was pushed there can end, or beyond the far side begin. */
  readonly #ends: Uint8Array
  readonly #begins: Uint8Array

  constructor(longest: number) {
    this.#ends = new Uint8Array(longest + 1)
    this.#begins = new Uint8Array(longest + 1)
  }

  /** Places inside the side, rising, at which no block is cut. */
  of(side: Side): number[] {
    this.#markEnds(side)
    const { near, block } = side
    const inside = isClear(side) ? this.#toTheMiddle(side) : this.#apart(side)
    const places = inside.map((at) => near + at)
    return block ? places.filter((at) => at <= block[0] || at >= block[1]) : places
  }

  #markEnds({ near, far, reach: { sums }, defects, block }: Side): void {
    const marks = this.#ends.fill(0, 0, far - near + 1)
    const markFrom = (origin: number): void => {
      if (origin < near) return
      for (const sum of sums) {
        if (origin + sum > far) return
        marks[origin + sum - near] = 1
      }
    }
    markFrom(near)
    for (const [, end] of defects) markFrom(end)
    if (!block) return
    markFrom(block[1])
    marks[block[0] - near] = 1
  }

  #markBegins({ near, far, reach: { sums }, defects, block }: Side): void {
    const marks = this.#begins.fill(0, 0, far - near + 1)
    const markFrom = (origin: number): void => {
      if (origin > far) return
      for (const sum of sums) {
        if (origin - sum < near) return
        marks[origin - sum - near] = 1
      }
    }
    markFrom(far)
    for (const [start] of defects) markFrom(start)
    if (!block) return
    markFrom(block[0])
    marks[block[1] - near] = 1
  }

  /**
   * On clear cloth the halves of a cut may change places, so cuts to the middle will do, and the last one,
   * beyond which there is too little for a piece.
   */
  #toTheMiddle({ near, far }: Side): number[] {
    const length = far - near
    const inside: number[] = []
    for (let at = 1; at < length; at += 1) if (this.#ends[at]) inside.push(at)
    const last = inside.at(-1)
    return inside.filter((at) => 2 * at <= length || at === last)
  }

  /**
   * What lies beyond a cut can be pushed to the far side. Of two cuts with no place between them where a
   * pushed piece can begin, the later one leaves as much beyond it, and more on this side (raster points:
   * Terno, Lindemann and Scheithauer, Zuschnittprobleme und ihre praktische Lösung, 1987, from memory).
   */
  #apart(side: Side): number[] {
    this.#markBegins(side)
    const places: number[] = []
    let isNew = true
    for (let at = side.far - side.near - 1; at > 0; at -= 1) {
      if (this.#begins[at]) isNew = true
      if (!this.#ends[at] || !isNew) continue
      places.push(at)
      isNew = false
    }
    return places.reverse()
  }
}
