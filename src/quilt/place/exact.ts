import { alike } from './alike.ts'
import type { Found } from './anneal.ts'
import type { Board } from './board.ts'
import { totalCost } from './cost.ts'
import { type PairCost, type Pairwise, pairwiseOf } from './pairwise.ts'
import { type SelfBound, selfBound, selfCosts } from './self-bound.ts'
import {
  type Edge,
  edgesOf,
  edgeTable,
  pairTable,
  type Strip,
  strips,
  type Told,
} from './strip-bound.ts'

export interface Proof extends Found {
  readonly proven: boolean
  /** Beginnings looked at. */
  readonly nodes: number
}

/** Boards of so many cells are proven at most. */
export const mostProven = 25
/** Beginnings times types: what one beginning costs grows with the types. */
const mostWork = 4_000_000
/** The strip's bound keeps so many states a place at most: the more pairs it tells, the more it needs. */
const mostStates = 40_000
/** What sums of fractions may lose. */
const rounding = 1e-6

/** The pairs that the strip's bound tells: as many as its states allow, the dearest repeats first. */
function toldByStrip(problem: Pairwise): readonly PairCost[] {
  const { pairs } = problem
  const repeats = [...new Set(pairs.map(({ repeat }) => repeat))].sort((a, b) => a - b)
  const touching = pairs.filter(({ touch }) => touch)
  const choices = [
    ...repeats.map((least) => pairs.filter(({ touch, repeat }) => touch || repeat >= least)),
    touching,
    touching.filter(({ p, q }) => q === p + 1),
  ]
  const fits = (told: readonly PairCost[]): boolean =>
    edgesOf(problem, told).every(({ states }) => states <= mostStates)
  return choices.find(fits) ?? []
}

/** What the strip tells and what is left for the other bounds, each pair with its table. */
interface View {
  readonly edges: readonly Edge[]
  readonly best: readonly Strip[]
  readonly self: SelfBound
  readonly others: readonly Told[]
  readonly floor: number
}

/** `repeats`: whether the strip tells its pairs' repeats too, or only their edges. */
function viewOf(problem: Pairwise, pairs: readonly PairCost[], repeats: boolean): View {
  const told = new Set(pairs)
  const table = repeats ? pairTable : edgeTable
  const { edges, best, floor } = strips(
    problem,
    pairs.map((pair) => ({ ...pair, table: table(problem, pair) })),
  )
  const bySelf = (pair: PairCost): boolean => !repeats || !told.has(pair)
  const self = selfBound(problem, selfCosts(problem, bySelf))
  const others = problem.pairs
    .filter(bySelf)
    .map((pair) => (told.has(pair) ? { ...pair, adj: new Float64Array(0) } : pair))
    .map((pair) => ({ ...pair, table: pairTable(problem, pair) }))
  const pieces = piecesOf(problem)
  const own = [...pieces].reduce((sum, [garment, count]) => sum + self(garment, 0, count), 0)
  return { edges, best, self, others, floor: floor + own }
}

/** Where one garment has very many pieces, what they cost one another tells more than a strip does. */
function bestView(problem: Pairwise): View {
  const pairs = toldByStrip(problem)
  const touching = pairs.filter(({ touch }) => touch)
  const [strip, alone] = [viewOf(problem, pairs, true), viewOf(problem, touching, false)]
  return alone.floor > strip.floor + rounding ? alone : strip
}

function piecesOf({ garment, counts }: Pairwise): Map<number, number> {
  const pieces = new Map<number, number>()
  counts.forEach((count, t) => {
    pieces.set(garment[t]!, (pieces.get(garment[t]!) ?? 0) + count)
  })
  return pieces
}

/** The largest number that divides every cost: two placements differ by at least that. 0 where none is. */
function stepOf({ pairs }: Pairwise): number {
  const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b))
  let step = 0
  for (const { repeat, adj } of pairs) {
    for (const cost of [repeat, ...adj]) {
      if (!Number.isInteger(cost)) return 0
      step = gcd(step, cost)
    }
  }
  return step
}

/** The pairs by their first place. */
function byFirst({ cells }: Pairwise, pairs: readonly Told[]): Told[][] {
  const lists: Told[][] = Array.from({ length: cells }, () => [])
  for (const pair of pairs) lists[pair.p]!.push(pair)
  return lists
}

const leastEdge = ({ adj }: PairCost): number => (adj.length > 0 ? Math.min(...adj) : 0)

/**
 * Branch and bound: cells are decided one after another, and a beginning is left where no end of it can be
 * better than the best known. What the rest costs at least is the sum of three that tell different costs:
 * the strip's pairs among the rest, other repeats among the rest (each garment for itself), and the other
 * pairs between what is decided and the rest (each cell for itself). After `nodes` beginnings it ends
 * unproven, with the best known.
 */
export function prove(board: Board, known: Found, nodes?: number): Proof {
  return new Branching(board, known).run(nodes ?? mostWork / board.types)
}

class Branching {
  readonly #board: Board
  readonly #problem: Pairwise
  readonly #edges: readonly Edge[]
  readonly #strips: readonly Strip[]
  readonly #self: SelfBound
  /** For each place, the least that edges which the strip does not tell cost among the cells from there on. */
  readonly #outside: Float64Array
  readonly #all: readonly (readonly Told[])[]
  readonly #other: readonly (readonly Told[])[]
  readonly #step: number
  readonly #before: Int32Array
  readonly #corners: readonly number[]
  readonly #garments: readonly number[]
  readonly #left: Int32Array
  readonly #leftOf: Int32Array
  readonly #at: Int32Array
  /** For each place, the place of each type among those it may hold. */
  readonly #choice: readonly Int32Array[]
  /** By decided places, then cell and type: what the decided ones cost it; all pairs, and those outside the strip. */
  readonly #owed: readonly Float64Array[]
  readonly #owedOutside: readonly Float64Array[]
  #best: Found
  #nodes = 0
  #budget = 0

  constructor(board: Board, known: Found) {
    const problem = pairwiseOf(board)
    const { cells, types, pairs, counts, may } = problem
    const pieces = piecesOf(problem)
    const { edges, best, self, others } = bestView(problem)
    this.#board = board
    this.#problem = problem
    this.#edges = edges
    this.#strips = best
    this.#self = self
    this.#outside = Float64Array.from({ length: cells + 1 }, (_, d) =>
      others.reduce((sum, pair) => (pair.p >= d ? sum + leastEdge(pair) : sum), 0),
    )
    this.#all = byFirst(
      problem,
      pairs.map((pair) => ({ ...pair, table: pairTable(problem, pair) })),
    )
    this.#other = byFirst(problem, others)
    this.#step = stepOf(problem)
    const symmetry = alike(board, problem)
    this.#before = symmetry.before
    this.#corners = symmetry.corners
    this.#garments = [...pieces.keys()]
    this.#left = counts.slice()
    this.#leftOf = new Int32Array(Math.max(...pieces.keys()) + 1)
    for (const [g, count] of pieces) this.#leftOf[g] = count
    this.#at = new Int32Array(cells)
    this.#choice = may.map((list) => Int32Array.from({ length: types }, (_, t) => list.indexOf(t)))
    const tables = () => Array.from({ length: cells + 1 }, () => new Float64Array(cells * types))
    this.#owed = tables()
    this.#owedOutside = tables()
    this.#best = known
  }

  run(nodes: number): Proof {
    this.#budget = nodes
    if (!this.#isHopeless(this.#rest(0))) this.#decide(0, 0)
    return { ...this.#best, proven: this.#nodes < this.#budget, nodes: this.#nodes }
  }

  /** Whether nothing that costs at least `floor` can be better than the best known. */
  #isHopeless(floor: number): boolean {
    return floor > this.#best.cost - (this.#step > 0 ? this.#step - rounding : rounding)
  }

  #decide(p: number, paid: number): void {
    const { cells, types, may, garment } = this.#problem
    if (this.#nodes >= this.#budget) return
    this.#nodes++
    if (p === cells) {
      this.#keep()
      return
    }
    const owed = this.#owed[p]!
    const ends: { t: number; cost: number; floor: number }[] = []
    for (const t of may[p]!) {
      if (this.#left[t] === 0 || !this.#isFirstOfAlike(t, p)) continue
      const cost = paid + owed[p * types + t]!
      this.#take(p, t, garment[t]!, -1)
      const floor = cost + this.#rest(p + 1)
      this.#take(p, t, garment[t]!, 1)
      if (!this.#isHopeless(floor)) ends.push({ t, cost, floor })
    }
    ends.sort((a, b) => a.floor - b.floor)
    for (const { t, cost, floor } of ends) {
      if (this.#isHopeless(floor)) return
      this.#take(p, t, garment[t]!, -1)
      this.#charge(p, t, this.#owed, this.#all)
      this.#charge(p, t, this.#owedOutside, this.#other)
      if (!this.#isHopeless(cost + this.#rest(p + 1) + this.#owing(p + 1))) {
        this.#decide(p + 1, cost)
      }
      this.#take(p, t, garment[t]!, 1)
    }
  }

  #take(p: number, t: number, garment: number, by: number): void {
    this.#at[p] = t
    this.#left[t]! += by
    this.#leftOf[garment]! += by
  }

  /** Of types that are alike the first comes first; of corners that are alike the first has the lowest type. */
  #isFirstOfAlike(t: number, p: number): boolean {
    const other = this.#before[t]!
    if (other >= 0 && this.#left[other] === this.#problem.counts[other]) return false
    return p === 0 || !this.#corners.includes(p) || t >= this.#at[0]!
  }

  /** Charges the later cells for what lies in place p. */
  #charge(
    p: number,
    t: number,
    owed: readonly Float64Array[],
    later: readonly (readonly Told[])[],
  ): void {
    const { types, cells } = this.#problem
    const next = owed[p + 1]!
    const begin = (p + 1) * types
    next.set(owed[p]!.subarray(begin, cells * types), begin)
    for (const { q, table } of later[p]!) {
      for (let u = 0; u < types; u++) next[q * types + u]! += table[t * types + u]!
    }
  }

  /** The least that the cells from place d on cost among themselves, and with the strip's edge. */
  #rest(d: number): number {
    const { places, factors } = this.#edges[d]!
    let state = 0
    for (let n = 0; n < places.length; n++) {
      state += this.#choice[places[n]!]![this.#at[places[n]!]!]! * factors[n]!
    }
    let most = -Infinity
    for (const { prices, rest } of this.#strips) {
      let floor = rest[d]![state]!
      for (let t = 0; t < prices.length; t++) floor -= prices[t]! * this.#left[t]!
      if (floor > most) most = floor
    }
    for (const g of this.#garments) most += this.#self(g, d, this.#leftOf[g]!)
    return most + this.#outside[d]!
  }

  /** The least that the cells from place d on owe to what is decided, outside the strip. */
  #owing(d: number): number {
    const { cells, types, may } = this.#problem
    const owed = this.#owedOutside[d]!
    let sum = 0
    for (let p = d; p < cells; p++) {
      let least = Infinity
      for (const t of may[p]!) {
        if (this.#left[t]! > 0 && owed[p * types + t]! < least) least = owed[p * types + t]!
      }
      sum += least
    }
    return sum
  }

  #keep(): void {
    const { cellAt, typeAt } = this.#problem
    const at = new Int32Array(this.#board.cells)
    this.#at.forEach((t, p) => {
      at[cellAt[p]!] = typeAt[t]!
    })
    const cost = totalCost(this.#board, at)
    if (cost < this.#best.cost - 1e-9) this.#best = { at, cost }
  }
}
