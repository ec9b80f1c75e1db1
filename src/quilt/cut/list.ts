import { listed, type Vectors } from './fronts.ts'
import { type Cut, type CutTree, partsOf, type Rect } from './tree.ts'

/** A cut piece where it lies on the panel; `k` is its size, or one more than the last for the block. */
export interface CutPiece {
  readonly k: number
  readonly x: number
  readonly y: number
  readonly w: number
  readonly h: number
}

/** One cut right across the rectangle (x1, y1) to (x2, y2), which an earlier cut left. */
export interface CutStep {
  readonly cut: 'V' | 'H'
  readonly at: number
  readonly rect: readonly [x1: number, y1: number, x2: number, y2: number]
}

export interface CutList {
  readonly items: readonly CutPiece[]
  /** In the order of the bench: a rectangle is there before it is cut. */
  readonly cuts: readonly CutStep[]
}

/** The vectors of each front as text, to find one by its counts. */
const texts = new WeakMap<Vectors, ReadonlySet<string>>()

function textsOf(front: Vectors): ReadonlySet<string> {
  const known = texts.get(front)
  if (known) return known
  const made = new Set(listed(front).map((vector) => vector.join()))
  texts.set(front, made)
  return made
}

/** Vectors of a and b that make the target together; null where none do. */
function addends(
  target: readonly number[],
  a: Vectors,
  b: Vectors,
  bounds: readonly number[] | undefined,
): readonly [number[], number[]] | null {
  if (a.n === 0 || b.n === 0) return null
  if (target.some((count, size) => a.most[size]! + b.most[size]! < count)) return null
  if (bounds) return clampedAddends(target, a, b, bounds)
  const others = textsOf(b)
  for (const one of listed(a)) {
    const other = target.map((count, size) => count - one[size]!)
    if (others.has(other.join())) return [one, other]
  }
  return null
}

function clampedAddends(
  target: readonly number[],
  a: Vectors,
  b: Vectors,
  bounds: readonly number[],
): readonly [number[], number[]] | null {
  const others = listed(b)
  for (const one of listed(a)) {
    const other = others.find((two) =>
      target.every((count, size) => Math.min(one[size]! + two[size]!, bounds[size]!) === count),
    )
    if (other) return [one, other]
  }
  return null
}

/** One list of cuts that gives the counts, which must be on the front of the rectangle. */
export function listFor(
  tree: CutTree<Vectors>,
  whole: Rect,
  counts: readonly number[],
  bounds: readonly number[] | undefined,
): CutList {
  const items: CutPiece[] = []
  const cuts: CutStep[] = []

  const put = (k: number, [x1, y1, x2, y2]: Rect): void => {
    items.push({ k, x: x1, y: y1, w: x2 - x1, h: y2 - y1 })
  }
  const step = (rect: Rect, { way, at }: Cut): readonly [Rect, Rect] => {
    cuts.push({ cut: way, at, rect })
    return partsOf(rect, { way, at })
  }

  function go(rect: Rect, target: readonly number[]): void {
    if (!tree.holdsBlock(rect) && target.every((count) => count === 0)) return
    const trim = tree.trimOf(rect)
    if (trim) {
      go(step(rect, trim.cut)[trim.keeps], target)
      return
    }
    if (tree.isBlock(rect)) {
      put(target.length, rect)
      return
    }
    const size = tree.exactly(rect).find((k) => target.every((count, n) => count === +(n === k)))
    if (size !== undefined) {
      put(size, rect)
      return
    }
    for (const cut of tree.cutsOf(rect)) {
      const [a, b] = partsOf(rect, cut)
      const sum = addends(target, tree.frontOf(a), tree.frontOf(b), bounds)
      if (!sum) continue
      step(rect, cut)
      go(a, sum[0])
      go(b, sum[1])
      return
    }
    throw new Error(`no cut gives ${target.join()} from ${rect.join()}`)
  }

  go(whole, counts)
  return { items, cuts }
}
