import type { Fronts } from './fronts.ts'
import type { Box, PieceSize } from './panel.ts'
import { idleEnd, Places, type Side } from './places.ts'
import { Sums, waysOf } from './sums.ts'

/** A rectangle of the panel, from its upper left corner to its lower right one. */
export type Rect = readonly [x1: number, y1: number, x2: number, y2: number]

/** A straight cut right across a rectangle (`H`) or right down it (`V`), at a place on the panel. */
export interface Cut {
  readonly way: 'V' | 'H'
  readonly at: number
}

/** A cut whose one part gives nothing; `keeps` is the other. */
export interface Trim {
  readonly cut: Cut
  readonly keeps: 0 | 1
}

export const partsOf = ([x1, y1, x2, y2]: Rect, { way, at }: Cut): readonly [Rect, Rect] =>
  way === 'V'
    ? [
        [x1, y1, at, y2],
        [at, y1, x2, y2],
      ]
    : [
        [x1, y1, x2, at],
        [x1, at, x2, y2],
      ]

const meets = ({ x, y, w, h }: Box, x1: number, y1: number, x2: number, y2: number): boolean =>
  x < x2 && x1 < x + w && y < y2 && y1 < y + h

const spanOf = ({ x, y, w, h }: Box, way: 'V' | 'H'): readonly [start: number, end: number] =>
  way === 'V' ? [x, x + w] : [y, y + h]

/**
 * All that guillotine cuts can make of the rectangles of a panel. Exact: whatever is cut can be pushed
 * left and up until each piece meets the edge of its rectangle, the right (lower) edge of a defect, an
 * edge of the block, or another piece, so only cuts at these places are looked at (discretisation
 * points: Herz, IBM J. Res. Dev. 16 (1972) 462; Christofides and Whitlock, Operations Research 25
 * (1977) 30; both from memory). Clear cloth of one size is looked at once, wherever it lies.
 */
export class CutTree<F> {
  readonly #ways
  readonly #fronts: Fronts<F>
  readonly #across: Sums
  readonly #down: Sums
  readonly #clear: Map<number, F>
  readonly #spoiled = new Map<number, F>()
  readonly #defects: readonly Box[]
  readonly #block: Box | null
  readonly #places: Places
  /** For each width, the least height that a piece of that width or less needs. */
  readonly #leastHeight: Int32Array
  readonly #columns: number
  readonly #rows: number

  /** `from`: a tree of the same pieces and panel, whose clear cloth need not be looked at again. */
  constructor(
    {
      W,
      H,
      pieces,
    }: { readonly W: number; readonly H: number; readonly pieces: readonly PieceSize[] },
    fronts: Fronts<F>,
    { defects, block }: { readonly defects: readonly Box[]; readonly block: Box | null },
    from?: CutTree<F>,
  ) {
    this.#ways = waysOf(pieces)
    this.#fronts = fronts
    this.#across = from
      ? from.#across
      : new Sums(
          this.#ways.map(({ w, h }) => [w, h]),
          W,
        )
    this.#down = from
      ? from.#down
      : new Sums(
          this.#ways.map(({ w, h }) => [h, w]),
          H,
        )
    this.#clear = from ? from.#clear : new Map()
    this.#defects = defects
    this.#block = block
    this.#places = new Places(Math.max(W, H))
    this.#columns = W + 1
    this.#rows = H + 1
    this.#leastHeight = new Int32Array(W + 1).map((_, width) =>
      Math.min(H + 1, ...this.#ways.filter(({ w }) => w <= width).map(({ h }) => h)),
    )
  }

  #defectsIn(x1: number, y1: number, x2: number, y2: number): Box[] {
    const found: Box[] = []
    for (const defect of this.#defects) if (meets(defect, x1, y1, x2, y2)) found.push(defect)
    return found
  }

  #blockIn([x1, y1, x2, y2]: Rect): Box | null {
    return this.#block && meets(this.#block, x1, y1, x2, y2) ? this.#block : null
  }

  holdsBlock(rect: Rect): boolean {
    return this.#blockIn(rect) !== null
  }

  isBlock([x1, y1, x2, y2]: Rect): boolean {
    const block = this.#block
    return (
      block !== null &&
      block.x === x1 &&
      block.y === y1 &&
      block.x + block.w === x2 &&
      block.y + block.h === y2
    )
  }

  #side(rect: Rect, way: 'V' | 'H', defects: readonly Box[], block: Box | null): Side {
    const [x1, y1, x2, y2] = rect
    const isDown = way === 'V'
    return {
      near: isDown ? x1 : y1,
      far: isDown ? x2 : y2,
      reach: isDown ? this.#across.within(y2 - y1) : this.#down.within(x2 - x1),
      defects: defects.map((defect) => spanOf(defect, way)),
      block: block && spanOf(block, way),
    }
  }

  /** A strip along one edge that a defect takes up whole, or where no piece need end. */
  trimOf(rect: Rect): Trim | null {
    const [x1, y1, x2, y2] = rect
    const defects = this.#defectsIn(x1, y1, x2, y2)
    for (const { x, y, w, h } of defects) {
      const isFullDown = y <= y1 && y + h >= y2
      const isFullAcross = x <= x1 && x + w >= x2
      if (isFullDown && isFullAcross) return null
      if (isFullDown && x <= x1) return { cut: { way: 'V', at: x + w }, keeps: 1 }
      if (isFullDown && x + w >= x2) return { cut: { way: 'V', at: x }, keeps: 0 }
      if (isFullAcross && y <= y1) return { cut: { way: 'H', at: y + h }, keeps: 1 }
      if (isFullAcross && y + h >= y2) return { cut: { way: 'H', at: y }, keeps: 0 }
    }
    const block = this.#blockIn(rect)
    for (const way of ['V', 'H'] as const) {
      const idle = idleEnd(this.#side(rect, way, defects, block))
      if (idle) return { cut: { way, at: idle.at }, keeps: idle.keeps }
    }
    return null
  }

  #trimmed(rect: Rect): Rect {
    let left = rect
    for (let trim = this.trimOf(left); trim; trim = this.trimOf(left)) {
      left = partsOf(left, trim.cut)[trim.keeps]
    }
    return left
  }

  /** The cuts that matter. */
  cutsOf(rect: Rect): Cut[] {
    return [...this.#cutsOf(rect, 'V'), ...this.#cutsOf(rect, 'H')]
  }

  #cutsOf(rect: Rect, way: 'V' | 'H'): Cut[] {
    const side = this.#side(rect, way, this.#defectsIn(...rect), this.#blockIn(rect))
    return this.#places.of(side).map((at) => ({ way, at }))
  }

  /** Sizes whose piece is the rectangle itself. */
  exactly(rect: Rect): number[] {
    const [x1, y1, x2, y2] = rect
    if (this.#defectsIn(x1, y1, x2, y2).length > 0 || this.#blockIn(rect)) return []
    const alike = this.#ways.filter(({ w, h }) => w === x2 - x1 && h === y2 - y1)
    return [...new Set(alike.map(({ size }) => size))]
  }

  frontOf(rect: Rect): F {
    const [x1, y1, x2, y2] = rect
    const block = this.#blockIn(rect)
    if (!block && y2 - y1 < this.#leastHeight[x2 - x1]!) return this.#fronts.nothing
    const isClear = !block && !this.#defects.some((defect) => meets(defect, x1, y1, x2, y2))
    const known = isClear ? this.#clear : this.#spoiled
    // Small whole numbers: a map finds them fastest.
    const across = isClear ? x2 - x1 : x1 * this.#columns + x2
    const key = isClear
      ? across * this.#rows + y2 - y1
      : (across * this.#rows + y1) * this.#rows + y2
    const found = known.get(key)
    if (found !== undefined) return found
    const tight = this.#trimmed(rect)
    const front = tight === rect ? this.#cut(rect) : this.frontOf(tight)
    known.set(key, front)
    return front
  }

  #cut(rect: Rect): F {
    const alone = this.exactly(rect).map((size) => this.#fronts.piece(size))
    if (this.isBlock(rect) || !this.#blockIn(rect)) alone.push(this.#fronts.nothing)
    const pairs = (['V', 'H'] as const).flatMap((way) => this.#pairs(rect, way))
    return this.#fronts.best(alone, pairs)
  }

  /**
   * What the cuts of one way leave. Of cuts that leave the same on one side the one is enough that leaves
   * most on the other: the first with that near side, and the last with that far side.
   */
  #pairs(rect: Rect, way: 'V' | 'H'): (readonly [F, F])[] {
    const all = this.#cutsOf(rect, way).map((cut) => {
      const [a, b] = partsOf(rect, cut)
      return [this.frontOf(a), this.frontOf(b)] as const
    })
    const nearest = all.filter(([a], n) => a !== all[n - 1]?.[0])
    return nearest.filter(([, b], n) => b !== nearest[n + 1]?.[1])
  }
}
