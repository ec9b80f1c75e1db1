import type { CutList, CutPiece } from '../quilt/cut/list.ts'
import type { PanelToCut } from '../quilt/cut/panel.ts'
import type { Pattern } from '../quilt/cut/patterns.ts'
import { type Cut, partsOf, type Rect } from '../quilt/cut/tree.ts'

export type Side = 'above' | 'below' | 'left' | 'right'

/** What lies on one side of a cut: a piece, cloth that is left over, or what a later cut goes through. */
export type Given = CutPiece | 'leftover' | 'cut-further'

/** A cut by its number, from 1; whole quarter inches. */
export interface BenchCut extends Cut {
  readonly number: number
  /** What it goes right across: the side of an earlier cut, or the whole panel (null). */
  readonly of: { readonly cut: number; readonly side: Side } | null
  readonly rect: Rect
  /** Left and right of the cut, or above and below. */
  readonly gives: readonly [Given, Given]
}

export interface BenchOrder {
  readonly cuts: readonly BenchCut[]
  readonly leftovers: readonly Rect[]
}

/** A panel, one way to cut it, and the order of its cuts. */
export interface PanelCut {
  readonly panel: PanelToCut
  readonly pattern: Pattern
  readonly order: BenchOrder
}

/** What is worth keeping of a rectangle, as tight as its pieces lie: what is around it is trimmed off. */
type Core =
  | { readonly rect: Rect; readonly piece: CutPiece }
  | { readonly rect: Rect; readonly piece: null; readonly cut: Cut; readonly cores: Pair }

type Pair = readonly [Core, Core]

const around = ([a1, b1, a2, b2]: Rect, [c1, d1, c2, d2]: Rect): Rect => [
  Math.min(a1, c1),
  Math.min(b1, d1),
  Math.max(a2, c2),
  Math.max(b2, d2),
]

/** With cloth left over on both sides of a cut, it goes along the nearer piece and spares a trim. */
function between({ way, at }: Cut, [near, far]: Pair): Core {
  const [end, start] = way === 'V' ? [near.rect[2], far.rect[0]] : [near.rect[3], far.rect[1]]
  return {
    rect: around(near.rect, far.rect),
    piece: null,
    cut: { way, at: end < at && at < start ? end : at },
    cores: [near, far],
  }
}

/** Throws where a cut or a piece belongs to no rectangle that the cuts before it left. */
function coreOf(whole: Rect, { items, cuts }: CutList): Core | null {
  const cutOf = new Map(cuts.map((step) => [step.rect.join(), step]))
  const pieceOf = new Map(
    items.map((piece) => [[piece.x, piece.y, piece.x + piece.w, piece.y + piece.h].join(), piece]),
  )
  let seen = 0
  const read = (rect: Rect): Core | null => {
    const step = cutOf.get(rect.join())
    const piece = pieceOf.get(rect.join())
    if (!step) {
      if (!piece) return null
      seen += 1
      return { rect, piece }
    }
    seen += 1
    const cut: Cut = { way: step.cut, at: step.at }
    const [a, b] = partsOf(rect, cut)
    const [near, far] = [read(a), read(b)]
    return near && far ? between(cut, [near, far]) : (near ?? far)
  }
  const core = read(whole)
  if (seen !== items.length + cuts.length) throw new Error('The cuts are not of this panel.')
  return core
}

interface Strip {
  readonly cut: Cut
  readonly keeps: 0 | 1
  readonly area: number
}

/** The strip to trim off first is the largest, so that most of what is left over stays in one. */
function nextTrim([x1, y1, x2, y2]: Rect, [a1, b1, a2, b2]: Rect): Strip | null {
  const [w, h] = [x2 - x1, y2 - y1]
  const strips: Strip[] = [
    { cut: { way: 'H', at: b1 }, keeps: 1, area: (b1 - y1) * w },
    { cut: { way: 'H', at: b2 }, keeps: 0, area: (y2 - b2) * w },
    { cut: { way: 'V', at: a1 }, keeps: 1, area: (a1 - x1) * h },
    { cut: { way: 'V', at: a2 }, keeps: 0, area: (x2 - a2) * h },
  ]
  const largest = strips.reduce((most, one) => (one.area > most.area ? one : most))
  return largest.area > 0 ? largest : null
}

const sidesOf = (way: Cut['way']): readonly [Side, Side] =>
  way === 'V' ? ['left', 'right'] : ['above', 'below']

const given = (rect: Rect, core: Core): Given =>
  core.piece && rect.join() === core.rect.join() ? core.piece : 'cut-further'

/**
 * The cuts of a pattern as they are made at the bench: the same pieces with as few cuts as their order
 * allows. Trims one after another become one, and what several parts have trimmed off at one line is
 * trimmed off before they are parted. Throws where the pattern is not of the panel.
 */
export function benchOrder(
  { W, H }: { readonly W: number; readonly H: number },
  pattern: CutList,
): BenchOrder {
  const cuts: BenchCut[] = []
  const leftovers: Rect[] = []

  const add = (rect: Rect, { way, at }: Cut, of: BenchCut['of'], gives: BenchCut['gives']) => {
    const number = cuts.length + 1
    cuts.push({ number, way, at, rect, of, gives })
    return sidesOf(way).map((side) => ({ cut: number, side })) as [
      { cut: number; side: Side },
      { cut: number; side: Side },
    ]
  }

  function go(rect: Rect, core: Core, of: BenchCut['of']): void {
    const trim = nextTrim(rect, core.rect)
    if (trim) {
      const parts = partsOf(rect, trim.cut)
      const kept = parts[trim.keeps]
      const whatIsKept = given(kept, core)
      leftovers.push(parts[trim.keeps === 0 ? 1 : 0])
      const sides = add(
        rect,
        trim.cut,
        of,
        trim.keeps === 0 ? [whatIsKept, 'leftover'] : ['leftover', whatIsKept],
      )
      go(kept, core, sides[trim.keeps])
      return
    }
    if (core.piece) return
    const [a, b] = partsOf(rect, core.cut)
    const [near, far] = core.cores
    const sides = add(rect, core.cut, of, [given(a, near), given(b, far)])
    go(a, near, sides[0])
    go(b, far, sides[1])
  }

  const whole: Rect = [0, 0, W, H]
  const core = coreOf(whole, pattern)
  if (core) go(whole, core, null)
  else leftovers.push(whole)
  return { cuts, leftovers }
}
