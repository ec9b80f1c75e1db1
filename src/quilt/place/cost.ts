import { type Board, noGarment } from './board.ts'

/** The whole cost of a placement: every pair once. `at` is the type in each cell. */
export function totalCost(board: Board, at: ArrayLike<number>): number {
  const { near, sides, garment, adj, types } = board
  let sum = 0
  for (let i = 0; i < board.cells; i++) {
    const own = garment[at[i]!]!
    const nearEnd = own === noGarment ? 0 : near.from[i + 1]!
    for (let k = near.from[i]!; k < nearEnd; k++) {
      const j = near.to[k]!
      if (j > i && garment[at[j]!] === own) sum += near.cost[k]!
    }
    for (let k = sides.from[i]!; k < sides.from[i + 1]!; k++) {
      if (sides.first[k] === 1) sum += adj[at[i]! * types + at[sides.to[k]!]!]!
    }
  }
  return sum
}

/** What changes with all cells but `but` when `u` takes the place of `t` in cell `i`. */
function changeIn(
  { near, sides, garment, adj, types }: Board,
  at: ArrayLike<number>,
  [i, t, u, but]: readonly [i: number, t: number, u: number, but: number],
): number {
  const before = garment[t]!
  const after = garment[u]!
  let sum = 0
  if (before !== after) {
    const end = near.from[i + 1]!
    for (let k = near.from[i]!; k < end; k++) {
      const j = near.to[k]!
      const other = garment[at[j]!]!
      if (other === noGarment) continue
      // What `but` holds is `u`: nothing of it is taken away.
      if (other === before) sum -= near.cost[k]!
      else if (other === after && j !== but) sum += near.cost[k]!
    }
  }
  const end = sides.from[i + 1]!
  for (let k = sides.from[i]!; k < end; k++) {
    const j = sides.to[k]!
    if (j === but) continue
    const other = at[j]!
    sum +=
      sides.first[k] === 1
        ? adj[u * types + other]! - adj[t * types + other]!
        : adj[other * types + u]! - adj[other * types + t]!
  }
  return sum
}

/** What the edge between two cells costs, where they share one. */
function edgeCost({ sides, adj, types }: Board, i: number, j: number, t: number, u: number) {
  for (let k = sides.from[i]!; k < sides.from[i + 1]!; k++) {
    if (sides.to[k] === j) return sides.first[k] === 1 ? adj[t * types + u]! : adj[u * types + t]!
  }
  return 0
}

/** By how much the whole cost changes when cells `a` and `b` change what they hold. */
export function swapChange(board: Board, at: ArrayLike<number>, a: number, b: number): number {
  const t = at[a]!
  const u = at[b]!
  if (t === u || a === b) return 0
  const edge = edgeCost(board, a, b, u, t) - edgeCost(board, a, b, t, u)
  return changeIn(board, at, [a, t, u, b]) + changeIn(board, at, [b, u, t, a]) + edge
}

/** How many pairs of cells that share an edge hold the same garment. */
export function touchingPairs({ sides, garment, cells }: Board, at: ArrayLike<number>): number {
  let pairs = 0
  for (let i = 0; i < cells; i++) {
    if (garment[at[i]!] === noGarment) continue
    for (let k = sides.from[i]!; k < sides.from[i + 1]!; k++) {
      if (sides.first[k] === 1 && garment[at[i]!] === garment[at[sides.to[k]!]!]) pairs++
    }
  }
  return pairs
}
