import { type Board, noGarment } from './board.ts'
import { swapChange } from './cost.ts'

const none = new Int32Array(0)

/**
 * A placement with, for each cell and type, what that type would cost in that cell beside what lies around
 * it. So a change of two cells that do not tell of one another is four looks; keeping it costs more, and
 * is rarer.
 */
export class Field {
  readonly at: Int32Array
  /** Looks that keeping one change costs beside trying it, about. */
  readonly keeping: number
  readonly #board: Board
  readonly #cost: Float64Array
  /** The types of each garment. */
  readonly #typesOf: readonly Int32Array[]
  /** One bit for each two cells: whether they tell of one another. */
  readonly #tells: Uint8Array

  constructor(board: Board, at: Int32Array) {
    const { cells, types, garment, near, sides } = board
    this.#board = board
    this.at = at
    this.#cost = new Float64Array(cells * types)
    this.#typesOf = Array.from({ length: Math.max(...garment) + 1 }, (_, g) =>
      Int32Array.from([...garment.keys()].filter((t) => garment[t] === g)),
    )
    this.#tells = new Uint8Array(Math.ceil((cells * cells) / 8))
    for (const lists of [near, sides]) {
      for (let i = 0; i < cells; i++) {
        for (let k = lists.from[i]!; k < lists.from[i + 1]!; k++) {
          const bit = i * cells + lists.to[k]!
          this.#tells[bit >> 3]! |= 1 << (bit & 7)
        }
      }
    }
    for (let i = 0; i < cells; i++) this.#put(i, at[i]!, 1)
    this.keeping = (2 * (near.to.length * 2 + sides.to.length * types)) / cells / 4
  }

  /** By how much the whole cost changes when two cells change what they hold. */
  change(a: number, b: number): number {
    const { cells, types } = this.#board
    const bit = a * cells + b
    if ((this.#tells[bit >> 3]! & (1 << (bit & 7))) !== 0) {
      return swapChange(this.#board, this.at, a, b)
    }
    const [t, u] = [this.at[a]!, this.at[b]!]
    const cost = this.#cost
    const [atA, atB] = [a * types, b * types]
    return cost[atA + u]! - cost[atA + t]! + cost[atB + t]! - cost[atB + u]!
  }

  swap(a: number, b: number): void {
    const [t, u] = [this.at[a]!, this.at[b]!]
    this.#put(a, t, -1)
    this.#put(b, u, -1)
    this.at[a] = u
    this.at[b] = t
    this.#put(a, u, 1)
    this.#put(b, t, 1)
  }

  /** Tells the cells around that a type has come into a cell (1), or gone (−1). */
  #put(i: number, t: number, sign: 1 | -1): void {
    const { near, sides, adj, types, garment } = this.#board
    const cost = this.#cost
    const own = garment[t]!
    const alike = own === noGarment ? none : this.#typesOf[own]!
    const nearEnd = own === noGarment ? 0 : near.from[i + 1]!
    for (let k = near.from[i]!; k < nearEnd; k++) {
      const begin = near.to[k]! * types
      const more = sign * near.cost[k]!
      for (let n = 0; n < alike.length; n++) cost[begin + alike[n]!]! += more
    }
    const sidesEnd = sides.from[i + 1]!
    for (let k = sides.from[i]!; k < sidesEnd; k++) {
      const begin = sides.to[k]! * types
      if (sides.first[k] === 1) {
        for (let u = 0; u < types; u++) cost[begin + u]! += sign * adj[t * types + u]!
      } else for (let u = 0; u < types; u++) cost[begin + u]! += sign * adj[u * types + t]!
    }
  }
}
