import { Failure } from '../../base/failures.ts'
import { type Instance, mostNear, type PieceType, type Pin } from './instance.ts'

/** For each cell the others that tell, one list after another: cell `i`'s are `from[i]` up to `from[i + 1]`. */
export interface Lists {
  readonly from: Int32Array
  readonly to: Int32Array
}

/**
 * Cells, the types that may lie in them, and what it costs that they meet. A grid of equal cells is one
 * kind of board; pieces of many sizes, by which of them touch, are another.
 */
export interface Board {
  readonly cells: number
  readonly types: number
  readonly counts: readonly number[]
  /** Of each cell, and of each type: which role. */
  readonly cellRole: Int32Array
  readonly typeRole: Int32Array
  /** Of each type: which garment; `noGarment`: none, so that nothing of it repeats. */
  readonly garment: Int32Array
  /** Cells that cost `cost` where both hold the same garment. Each pair stands in both lists. */
  readonly near: Lists & { readonly cost: Float64Array }
  /** Cells that share an edge; `first` where the list's own cell is the left or upper one. */
  readonly sides: Lists & { readonly first: Uint8Array }
  /** `adj[t × types + u]`: t left of u or above it. */
  readonly adj: Float64Array
  /** The type fixed in each cell; −1 where none is. */
  readonly fixed: Int32Array
  /** Where each cell comes to lie when the board is turned or mirrored into itself at the same cost. */
  readonly images: readonly Int32Array[]
}

/** Two cells that tell, in one direction: `first` is left of `second` or above it. */
export interface Pair {
  readonly first: number
  readonly second: number
  readonly cost: number
  readonly touch: boolean
}

export const noGarment = -1

function numbered(names: readonly (string | number)[], known = new Map<string | number, number>()) {
  return Int32Array.from(names, (name) => {
    if (!known.has(name)) known.set(name, known.size)
    return known.get(name)!
  })
}

function garmentsOf(types: readonly PieceType[]): Int32Array {
  const known = new Map<string | number, number>()
  return Int32Array.from(types, ({ garment }) => {
    if (garment === null) return noGarment
    return numbered([garment], known)[0]!
  })
}

/** Both ends of each pair, sorted by their own cell. */
function lists(cells: number, pairs: readonly Pair[]) {
  const from = new Int32Array(cells + 1)
  for (const { first, second } of pairs) {
    from[first + 1]! += 1
    from[second + 1]! += 1
  }
  for (let i = 0; i < cells; i++) from[i + 1]! += from[i]!
  const next = from.slice()
  const to = new Int32Array(2 * pairs.length)
  const cost = new Float64Array(2 * pairs.length)
  const first = new Uint8Array(2 * pairs.length)
  const put = (at: number, other: number, pair: Pair): void => {
    const place = next[at]!++
    to[place] = other
    cost[place] = pair.cost
    first[place] = at === pair.first ? 1 : 0
  }
  for (const pair of pairs) {
    put(pair.first, pair.second, pair)
    put(pair.second, pair.first, pair)
  }
  return { from, to, cost, first }
}

export interface Parts {
  readonly cellRoles: readonly string[]
  readonly types: readonly PieceType[]
  readonly pairs: readonly Pair[]
  readonly adj: readonly (readonly number[])[]
  readonly pinned?: readonly Pin[] | undefined
  readonly images?: readonly Int32Array[]
}

export function boardOf({ cellRoles, types, pairs, adj, pinned = [], images = [] }: Parts): Board {
  const known = new Map<string | number, number>()
  const cells = cellRoles.length
  const fixed = new Int32Array(cells).fill(-1)
  for (const { cell, type } of pinned) fixed[cell] = type
  return {
    cells,
    types: types.length,
    counts: types.map(({ count }) => count),
    cellRole: numbered(cellRoles, known),
    typeRole: numbered(
      types.map(({ role }) => role),
      known,
    ),
    garment: garmentsOf(types),
    near: lists(
      cells,
      pairs.filter(({ cost }) => cost > 0),
    ),
    sides: lists(
      cells,
      pairs.filter(({ touch }) => touch),
    ),
    adj: Float64Array.from(adj.flat()),
    fixed,
    images,
  }
}

interface Step {
  readonly dx: number
  readonly dy: number
  readonly cost: number
}

/** Each step to a cell that comes later, row by row, and tells; sideways and down always do. */
function stepsOf({ rows, cols, repeat }: Instance): Step[] {
  const steps: Step[] = []
  const costs = new Map(Object.entries(repeat).map(([d2, cost]) => [Number(d2), cost]))
  const far = Math.max(1, ...[...costs].filter(([, cost]) => cost > 0).map(([d2]) => d2))
  const reach = Math.ceil(Math.sqrt(far))
  for (let dy = 0; dy < Math.min(rows, reach + 1); dy++) {
    const side = Math.min(cols - 1, reach)
    for (let dx = dy === 0 ? 1 : -side; dx <= side; dx++) {
      const d2 = dx * dx + dy * dy
      const cost = costs.get(d2) ?? 0
      if (cost > 0 || d2 === 1) steps.push({ dx, dy, cost })
    }
  }
  return steps
}

/** A square grid has seven images beside itself, an oblong one three; roles and costs must agree. */
function imagesOf({ rows, cols, cells, adj }: Instance): Int32Array[] {
  if (adj.some((row, t) => row.some((cost, u) => cost !== adj[u]![t]))) return []
  const images: Int32Array[] = []
  for (const turned of rows === cols ? [false, true] : [false]) {
    for (const [flipX, flipY] of [
      [false, false],
      [true, false],
      [false, true],
      [true, true],
    ] as const) {
      const image = Int32Array.from(cells, (_, i) => {
        const [y, x] = [Math.floor(i / cols), i % cols]
        const [to, down] = [flipX ? cols - 1 - x : x, flipY ? rows - 1 - y : y]
        return turned ? to * cols + down : down * cols + to
      })
      if (image.every((to, i) => cells[to] === cells[i])) images.push(image)
    }
  }
  return images.slice(1)
}

/** The board of a grid. Throws `bad_input` where so many distances tell that it would take too long. */
export function boardOfGrid(instance: Instance): Board {
  const { rows, cols, cells, types, adj, pinned } = instance
  const steps = stepsOf(instance)
  if (2 * steps.length * cells.length > mostNear) {
    const why = `too many distances (${steps.length}) for ${cells.length} cells`
    throw new Failure('bad_input', { field: 'repeat', why })
  }
  const pairs: Pair[] = []
  for (let y = 0; y < rows; y++) {
    for (let x = 0; x < cols; x++) {
      for (const { dx, dy, cost } of steps) {
        if (x + dx < 0 || x + dx >= cols || y + dy >= rows) continue
        const first = y * cols + x
        const touch = dx * dx + dy * dy === 1
        pairs.push({ first, second: first + dy * cols + dx, cost, touch })
      }
    }
  }
  return boardOf({ cellRoles: cells, types, pairs, adj, pinned, images: imagesOf(instance) })
}
