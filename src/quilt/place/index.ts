import { type Found, search } from './anneal.ts'
import { type Board, boardOfGrid, noGarment } from './board.ts'
import { swapChange, totalCost, touchingPairs } from './cost.ts'
import { mostProven, prove } from './exact.ts'
import type { Instance } from './instance.ts'
import { freeGroups, unpinned } from './start.ts'

export interface Placement {
  /** The type in each cell. */
  readonly cells: readonly number[]
  readonly cost: number
  /** True: no placement costs less. False: none cheaper was found, and there may be one. */
  readonly proven: boolean
  /** Pairs of cells that share an edge and hold the same garment. */
  readonly touching: number
}

/** What may be paid, as a share of the cost, for fewer pieces that touch one of their own garment. */
const apartWorth = 0.05

/** The board with repeats across an edge three times as dear. */
function dearerEdges(board: Board): Board {
  const { near, sides, cells } = board
  const cost = near.cost.slice()
  for (let i = 0; i < cells; i++) {
    const touching = new Set(sides.to.subarray(sides.from[i], sides.from[i + 1]))
    for (let k = near.from[i]!; k < near.from[i + 1]!; k++) {
      if (touching.has(near.to[k]!)) cost[k]! *= 3
    }
  }
  return { ...board, near: { ...near, cost } }
}

/** Where pieces of one garment touch: a placement where fewer do, if it costs hardly more. */
function apart(board: Board, found: Found, seed: number): Found {
  const touching = touchingPairs(board, found.at)
  if (touching === 0) return found
  const { at } = search(dearerEdges(board), seed, 1 / 2)
  const cost = totalCost(board, at)
  const isApart = touchingPairs(board, at) < touching && cost <= found.cost * (1 + apartWorth)
  return cost < found.cost || isApart ? { at, cost } : found
}

/** Each free cell has one type left to hold. */
function isForced(board: Board, groups: readonly Int32Array[]): boolean {
  const left = unpinned(board)
  const kinds = groups.map(
    (group) =>
      left.filter((n, t) => n > 0 && board.typeRole[t] === board.cellRole[group[0]!]).length,
  )
  return kinds.every((n) => n === 1)
}

function solve(board: Board, seed: number): Found & { readonly proven: boolean } {
  const found = search(board, seed)
  const groups = freeGroups(board)
  if (found.cost === 0 || isForced(board, groups)) return { ...found, proven: true }
  const free = groups.reduce((sum, group) => sum + group.length, 0)
  // The bounds of the proof take every type for a garment's.
  const mayProve = free <= mostProven && !board.garment.includes(noGarment)
  const proof = mayProve ? prove(board, found) : { ...found, proven: false }
  return proof.proven ? proof : { ...apart(board, proof, seed), proven: false }
}

/**
 * Lays the pieces on a board at the least cost that is found; on boards of up to 25 free cells it tries to
 * prove that none is less. An unproven placement may cost up to a twentieth more than the cheapest found
 * where so fewer pieces of one garment touch. The same seed gives the same placement.
 */
export function placeOn(board: Board, seed = 0): Placement {
  const { at, cost, proven } = solve(board, seed)
  return { cells: [...at], cost, proven, touching: touchingPairs(board, at) }
}

/** The placement of a grid's pieces. Throws `bad_input` where too many distances tell. */
export const place = (instance: Instance): Placement =>
  placeOn(boardOfGrid(instance), instance.seed)

/** By how much a placement's cost changes when two of its cells change what they hold. */
export const changeOfSwap = (
  instance: Instance,
  cells: readonly number[],
  [a, b]: readonly [number, number],
): number => swapChange(boardOfGrid(instance), cells, a, b)
