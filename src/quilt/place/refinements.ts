import type { Refinement } from './graph.ts'
import { costsOf, type PairCost, type Pairwise } from './pairwise.ts'

const none = (): number => 0

/** How many pieces of a type are laid: as many as there are in the end. */
export function countOf({ cells, counts, may }: Pairwise, type: number): Refinement {
  const count = counts[type]!
  const room = new Int32Array(cells + 1)
  for (let q = cells - 1; q >= 0; q--) room[q] = room[q + 1]! + (may[q]!.includes(type) ? 1 : 0)
  return {
    values: count + 1,
    next: (laid, q, t) => {
      const now = t === type ? laid + 1 : laid
      return now > count || count - now > room[q + 1]! ? -1 : now
    },
    extra: none,
  }
}

/** What lies in the first place of a pair until the second is decided, and so what the two cost together. */
export function pairOf(problem: Pairwise, pair: PairCost): Refinement {
  const { may, types } = problem
  const { p, q: end } = pair
  const table = costsOf(problem, pair)
  const width = may[end]!.length
  const place = (cell: number): Int32Array => {
    const choices = may[cell]!
    return Int32Array.from({ length: types }, (_, t) => choices.indexOf(t))
  }
  const [first, second] = [place(p), place(end)]
  // Choices that cost the same beside everything need not be told apart.
  const rows = new Map<string, number>([[Array<number>(width).fill(0).join(), 0]])
  const kinds = Int32Array.from(may[p]!, (_, c) => {
    const row = table.subarray(c * width, (c + 1) * width).join()
    if (!rows.has(row)) rows.set(row, rows.size)
    return rows.get(row)!
  })
  const costs = new Float64Array(rows.size * width)
  kinds.forEach((kind, c) => {
    costs.set(table.subarray(c * width, (c + 1) * width), kind * width)
  })
  return {
    values: rows.size,
    next: (kind, q, t) => (q === p ? kinds[first[t]!]! : q > p && q < end ? kind : 0),
    extra: (kind, q, t) => (q === end ? costs[kind * width + second[t]!]! : 0),
  }
}

/** How many of types that could change names have come: they come in their order. */
export function orderOf(lot: readonly number[], types: number): Refinement {
  const rank = Int32Array.from({ length: types }, (_, t) => lot.indexOf(t))
  return {
    values: lot.length + 1,
    next: (come, _, t) => (rank[t]! > come ? -1 : rank[t]! === come ? come + 1 : come),
    extra: none,
  }
}
