import type { Pairwise } from './pairwise.ts'

/** What `r` pieces of garment `g` cost one another at least, in the cells from place `d` on. */
export type SelfBound = (g: number, d: number, r: number) => number

/** What same garments pay in each pair of places, as a square table. */
export function selfCosts(
  { cells, pairs }: Pairwise,
  counted: (pair: Pairwise['pairs'][number]) => boolean,
): Float64Array {
  const costs = new Float64Array(cells * cells)
  for (const pair of pairs) {
    if (!counted(pair)) continue
    costs[pair.p * cells + pair.q] = pair.repeat
    costs[pair.q * cells + pair.p] = pair.repeat
  }
  return costs
}

/** So many choices are looked at for one entry of the table; beyond it a lower bound stands there. */
const choices = 200_000

/** `least[d][r]` for one set of cells, from the last cell backwards. */
function leastOf(cells: number, may: readonly boolean[], costs: Float64Array, most: number) {
  const least = Array.from({ length: cells + 1 }, () => new Float64Array(most + 1).fill(Infinity))
  least[cells]![0] = 0
  for (let d = cells - 1; d >= 0; d--) {
    for (let r = 0; r <= most; r++) {
      least[d]![r] = least[d + 1]![r]!
      if (may[d] && r > 0) least[d]![r] = withCell(d, r)
    }
  }
  return least

  function withCell(d: number, r: number): number {
    let best = least[d + 1]![r]!
    const floor = least[d + 1]![r - 1]!
    if (floor >= best) return best
    const taken = [d]
    let left = choices
    const choose = (next: number, need: number, cost: number): void => {
      if (need === 0) {
        if (cost < best) best = cost
        return
      }
      for (let at = next; at < cells; at++) {
        // Less than this the rest of the cells cannot cost, and less the later they begin.
        if (left-- <= 0 || cost + least[at]![need]! >= best || best <= floor) return
        if (!may[at]) continue
        const more = taken.reduce((sum, other) => sum + costs[at * cells + other]!, 0)
        if (cost + more + least[at + 1]![need - 1]! >= best) continue
        taken.push(at)
        choose(at + 1, need - 1, cost + more)
        taken.pop()
      }
    }
    choose(d + 1, r - 1, 0)
    return left > 0 ? best : floor
  }
}

/** The bound for every garment; those that may lie in the same cells share a table. */
export function selfBound(problem: Pairwise, costs: Float64Array): SelfBound {
  const { cells, garment, counts, may } = problem
  const most = Math.max(...[...new Set(garment)].map((g) => total(g)))
  const tables = new Map<string, Float64Array[]>()
  const ofGarment = new Map<number, Float64Array[]>()
  function total(g: number): number {
    return counts.reduce((sum, count, t) => (garment[t] === g ? sum + count : sum), 0)
  }
  for (const g of new Set(garment)) {
    const cellsOf = may.map((types) => types.some((t) => garment[t] === g))
    const key = cellsOf.map(Number).join('')
    if (!tables.has(key)) tables.set(key, leastOf(cells, cellsOf, costs, most))
    ofGarment.set(g, tables.get(key)!)
  }
  return (g, d, r) => ofGarment.get(g)![d]![r]!
}
