import type { Board } from './board.ts'
import type { Chance } from './chance.ts'

/** Cells that may change with one another: of one role, and not pinned. */
export function freeGroups({ cells, cellRole, fixed }: Board): Int32Array[] {
  const groups = new Map<number, number[]>()
  for (let i = 0; i < cells; i++) {
    if (fixed[i]! >= 0) continue
    const group = groups.get(cellRole[i]!)
    if (group) group.push(i)
    else groups.set(cellRole[i]!, [i])
  }
  return [...groups.values()].map((group) => Int32Array.from(group))
}

/** How many of each type are not pinned. */
export function unpinned({ counts, fixed }: Board): number[] {
  const left = [...counts]
  for (const type of fixed) if (type >= 0) left[type]! -= 1
  return left
}

function fill(board: Board, groups: readonly Int32Array[], piecesOf: (role: number) => number[]) {
  const at = board.fixed.slice()
  for (const group of groups) {
    const pieces = piecesOf(board.cellRole[group[0]!]!)
    group.forEach((cell, n) => {
      at[cell] = pieces[n]!
    })
  }
  return at
}

const typesOf = ({ typeRole, types }: Board, role: number): number[] =>
  Array.from({ length: types }, (_, t) => t).filter((t) => typeRole[t] === role)

/** Every piece anywhere its role allows. */
export function shuffled(board: Board, chance: Chance): Int32Array {
  const left = unpinned(board)
  return fill(board, freeGroups(board), (role) => {
    const pieces = typesOf(board, role).flatMap((t) => Array<number>(left[t]!).fill(t))
    for (let i = pieces.length - 1; i > 0; i--) {
      const j = chance.below(i + 1)
      ;[pieces[i], pieces[j]] = [pieces[j]!, pieces[i]!]
    }
    return pieces
  })
}

/** 0 and 1 by turns from cell to touching cell, as far as the board allows. */
function shades({ cells, sides }: Board): Uint8Array {
  const shade = new Uint8Array(cells).fill(2)
  for (let begin = 0; begin < cells; begin++) {
    if (shade[begin] !== 2) continue
    shade[begin] = 0
    const open = [begin]
    for (let i = open.pop(); i !== undefined; i = open.pop()) {
      for (let k = sides.from[i]!; k < sides.from[i + 1]!; k++) {
        const j = sides.to[k]!
        if (shade[j] !== 2) continue
        shade[j] = shade[i] === 0 ? 1 : 0
        open.push(j)
      }
    }
  }
  return shade
}

/**
 * Like a chessboard: the garments of most pieces fill the black cells from the top, the rest follow and
 * go on in the white cells from the top. Cells of one shade never touch, and the one garment that goes on
 * from black to white has its ends far apart: where a garment has no more than half of the cells, and all
 * have one role, nothing touches. More than half (of an even number of cells in rows) cannot but touch.
 */
export function chequered(board: Board): Int32Array {
  const left = unpinned(board)
  const shade = shades(board)
  const pieces = new Map<number, number>()
  board.garment.forEach((garment, t) => {
    pieces.set(garment, (pieces.get(garment) ?? 0) + left[t]!)
  })
  const size = (t: number): number => pieces.get(board.garment[t]!)!
  const groups = freeGroups(board).map((group) =>
    Int32Array.from([...group].sort((a, b) => shade[a]! - shade[b]! || a - b)),
  )
  return fill(board, groups, (role) =>
    typesOf(board, role)
      .sort((a, b) => size(b) - size(a) || board.garment[a]! - board.garment[b]! || a - b)
      .flatMap((t) => Array<number>(left[t]!).fill(t)),
  )
}
