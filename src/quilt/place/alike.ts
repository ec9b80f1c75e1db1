import type { Board } from './board.ts'
import type { Pairwise } from './pairwise.ts'

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
 * Types that could change names, each lot in the order in which a placement may be asked to begin with them.
 * With a pinned cell nothing is alike.
 */
export function alikeTypes(board: Board, { typeAt, anyFixed }: Pairwise): number[][] {
  if (anyFixed) return []
  const lots: number[][] = []
  typeAt.forEach((u, n) => {
    const lot = lots.find(([first]) => couldChange(board, typeAt[first!]!, u))
    if (lot) lot.push(n)
    else lots.push([n])
  })
  return lots.filter(({ length }) => length > 1)
}

/**
 * A type of a single piece need not be tried in cells that turning or mirroring the board brings to one
 * another: it may lie in the first of them alone. It must be none that could change names, or the placement
 * that is turned might be the one whose names come in order.
 */
export function turnedOnce(board: Board, problem: Pairwise, lots: readonly number[][]): Pairwise {
  const { counts, cellAt, anyFixed } = problem
  const single = counts.findIndex((count, t) => count === 1 && !lots.some((lot) => lot.includes(t)))
  if (single < 0 || anyFixed) return problem
  const may = problem.may.map((types, p) => {
    const isFirst = board.images.every((image) => image[cellAt[p]!]! >= cellAt[p]!)
    return isFirst ? types : types.filter((t) => t !== single)
  })
  return { ...problem, may }
}
