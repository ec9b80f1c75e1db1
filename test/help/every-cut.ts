import type { PanelToCut } from '../../src/quilt/cut/panel.ts'

/**
 * All undominated ways to cut a panel, found by trying every whole cut of every rectangle: slow, simple,
 * and sharing nothing with the program it is held against.
 */
export function everyCut(panel: PanelToCut): number[][] {
  const { W, H, pieces, feature } = panel
  type Rect = readonly [x1: number, y1: number, x2: number, y2: number]
  const meets = ([a1, b1, a2, b2]: Rect, [c1, d1, c2, d2]: Rect) =>
    a1 < c2 && c1 < a2 && b1 < d2 && d1 < b2
  const rectOf = (x: number, y: number, w: number, h: number): Rect => [x, y, x + w, y + h]
  const defects = panel.defects.map(({ x, y, w, h }) => rectOf(x, y, w, h))

  function best(vectors: readonly number[][]): number[][] {
    const once = [...new Map(vectors.map((vector) => [vector.join(), vector])).values()]
    return once.filter(
      (one) =>
        !once.some((other) => other !== one && other.every((count, size) => count >= one[size]!)),
    )
  }

  /** The fronts of every rectangle around (or, with no block, beside) the block. */
  function front(spoiled: readonly Rect[], block: Rect | null): number[][] {
    const known = new Map<string, number[][]>()
    const zero = pieces.map(() => 0)
    const go = (rect: Rect): number[][] => {
      const key = rect.join()
      const found = known.get(key)
      if (found) return found
      const [x1, y1, x2, y2] = rect
      const holds = block !== null && meets(rect, block)
      const all: number[][] = []
      if (!holds) {
        all.push(zero)
        if (!spoiled.some((one) => meets(one, rect))) {
          pieces.forEach(({ w, h, rot }, size) => {
            const lies = x2 - x1 === w && y2 - y1 === h
            const turned = rot && x2 - x1 === h && y2 - y1 === w
            if (lies || turned) all.push(zero.map((_, k) => (k === size ? 1 : 0)))
          })
        }
      } else if (block!.join() === key) {
        all.push(zero)
      }
      const halves: [Rect, Rect][] = []
      for (let x = x1 + 1; x < x2; x += 1) {
        if (holds && x > block![0] && x < block![2]) continue
        halves.push([
          [x1, y1, x, y2],
          [x, y1, x2, y2],
        ])
      }
      for (let y = y1 + 1; y < y2; y += 1) {
        if (holds && y > block![1] && y < block![3]) continue
        halves.push([
          [x1, y1, x2, y],
          [x1, y, x2, y2],
        ])
      }
      for (const [a, b] of halves) {
        for (const left of go(a)) {
          for (const right of go(b)) all.push(left.map((count, size) => count + right[size]!))
        }
      }
      const result = best(all)
      known.set(key, result)
      return result
    }
    return go([0, 0, W, H])
  }

  if (!feature) return sorted(front(defects, null))
  const { gx, gy, gw, gh, bw, bh, tol2, required } = feature
  const all: number[][] = []
  if (!required) {
    all.push(...front([...defects, rectOf(gx, gy, gw, gh)], null).map((counts) => [...counts, 0]))
  }
  for (let bx = 0; bx + bw <= W; bx += 1) {
    for (let by = 0; by + bh <= H; by += 1) {
      const block = rectOf(bx, by, bw, bh)
      const holds = bx <= gx && by <= gy && bx + bw >= gx + gw && by + bh >= gy + gh
      const centred =
        Math.abs(2 * bx + bw - 2 * gx - gw) <= tol2 && Math.abs(2 * by + bh - 2 * gy - gh) <= tol2
      if (!holds || !centred || defects.some((defect) => meets(defect, block))) continue
      all.push(...front(defects, block).map((counts) => [...counts, 1]))
    }
  }
  return sorted(best(all))
}

function sorted(vectors: readonly number[][]): number[][] {
  return vectors.toSorted((a, b) => {
    const at = a.findIndex((count, size) => count !== b[size])
    return at < 0 ? 0 : b[at]! - a[at]!
  })
}
