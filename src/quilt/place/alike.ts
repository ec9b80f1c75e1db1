import type { Board } from './board.ts'
import type { Pairwise } from './pairwise.ts'

export interface Alike {
  /** For each type one of smaller number that could take its place everywhere; −1 where there is none. */
  readonly before: Int32Array
  /** Places whose cells could be the first one, the board turned or mirrored. */
  readonly corners: readonly number[]
}

function couldChange(board: Board, t: number, u: number): boolean {
  const { adj, types, counts, typeRole, garment } = board
  const at = (a: number, b: number): number => adj[a * types + b]!
  const alone = (type: number): boolean =>
    garment.every((g, other) => g !== garment[type] || other === type || counts[other] === 0)
  return (
    typeRole[t] === typeRole[u] &&
    counts[t] === counts[u] &&
    alone(t) &&
    alone(u) &&
    at(t, u) === at(u, t) &&
    at(t, t) === at(u, u) &&
    counts.every(
      (count, w) =>
        count === 0 || w === t || w === u || (at(t, w) === at(u, w) && at(w, t) === at(w, u)),
    )
  )
}

/**
 * What need not be looked at twice: types that could change names, and the board turned or mirrored. Both
 * hold at once, as the placement that comes first by types, cell by cell, fulfils both. With a pinned cell
 * nothing is alike.
 */
export function alike(board: Board, { typeAt, anyFixed }: Pairwise): Alike {
  const before = new Int32Array(typeAt.length).fill(-1)
  if (anyFixed) return { before, corners: [] }
  typeAt.forEach((u, n) => {
    const found = typeAt.slice(0, n).findLastIndex((t) => couldChange(board, t, u))
    before[n] = found
  })
  return { before, corners: board.images.map((image) => image[0]!) }
}
