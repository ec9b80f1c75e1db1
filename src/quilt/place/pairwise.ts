import type { Board } from './board.ts'

/** Two cells by their place in the order of the search, `p` before `q`, and what they cost together. */
export interface PairCost {
  readonly p: number
  readonly q: number
  /** What is paid where both hold the same garment. */
  readonly repeat: number
  readonly touch: boolean
  /** `adj[t × types + u]`: what `t` in p and `u` in q cost across the edge they share; empty: none. */
  readonly adj: Float64Array
}

/** The board as the exact search sees it: only types that are used, cells in the order they are decided. */
export interface Pairwise {
  readonly cells: number
  readonly types: number
  /** The board's own number of each cell and type. */
  readonly cellAt: readonly number[]
  readonly typeAt: readonly number[]
  readonly counts: Int32Array
  readonly garment: Int32Array
  /** The types that each cell may hold. */
  readonly may: readonly Int32Array[]
  readonly pairs: readonly PairCost[]
  readonly anyFixed: boolean
}

function edgeTable(board: Board, typeAt: readonly number[], forward: boolean): Float64Array {
  return Float64Array.from(
    typeAt.flatMap((t) =>
      typeAt.map((u) => board.adj[forward ? t * board.types + u : u * board.types + t]!),
    ),
  )
}

/** Pinned cells are decided first; the others as they lie. */
export function pairwiseOf(board: Board): Pairwise {
  const all = Array.from({ length: board.cells }, (_, i) => i)
  const isFixed = (i: number): boolean => board.fixed[i]! >= 0
  const cellAt = [...all.filter(isFixed), ...all.filter((i) => !isFixed(i))]
  const typeAt = [...board.counts.keys()].filter((t) => board.counts[t]! > 0)
  const place = new Int32Array(board.cells)
  cellAt.forEach((cell, p) => {
    place[cell] = p
  })
  const tables = [edgeTable(board, typeAt, false), edgeTable(board, typeAt, true)]
  const none = new Float64Array(0)
  const pairs = new Map<string, PairCost>()
  for (const i of all) {
    const others = (lists: Board['near'] | Board['sides']) =>
      Array.from({ length: lists.from[i + 1]! - lists.from[i]! }, (_, k) => lists.from[i]! + k)
    const [p, put] = [
      place[i]!,
      (q: number, more: Partial<PairCost>) => {
        const key = `${p} ${q}`
        const known = pairs.get(key) ?? { p, q, repeat: 0, touch: false, adj: none }
        pairs.set(key, { ...known, ...more })
      },
    ]
    for (const k of others(board.near)) {
      const q = place[board.near.to[k]!]!
      if (q > p) put(q, { repeat: board.near.cost[k]! })
    }
    for (const k of others(board.sides)) {
      const q = place[board.sides.to[k]!]!
      if (q > p) put(q, { touch: true, adj: tables[board.sides.first[k]!]! })
    }
  }
  return {
    cells: board.cells,
    types: typeAt.length,
    cellAt,
    typeAt,
    counts: Int32Array.from(typeAt, (t) => board.counts[t]!),
    garment: Int32Array.from(typeAt, (t) => board.garment[t]!),
    may: cellAt.map((cell) =>
      Int32Array.from(
        [...typeAt.keys()].filter((n) =>
          isFixed(cell)
            ? board.fixed[cell] === typeAt[n]
            : board.typeRole[typeAt[n]!] === board.cellRole[cell],
        ),
      ),
    ),
    pairs: [...pairs.values()],
    anyFixed: all.some(isFixed),
  }
}

/** What a pair costs, by the choice of its first place among those it may hold, then of its second. */
export function costsOf(
  { types, may, garment }: Pairwise,
  { p, q, repeat, adj }: PairCost,
): Float64Array {
  const [first, second] = [may[p]!, may[q]!]
  const table = new Float64Array(first.length * second.length)
  first.forEach((t, c) => {
    second.forEach((u, d) => {
      const edge = adj.length > 0 ? adj[t * types + u]! : 0
      table[c * second.length + d] = edge + (garment[t] === garment[u] ? repeat : 0)
    })
  })
  return table
}
