import { alikeTypes, turnedOnce } from './alike.ts'
import type { Found } from './anneal.ts'
import type { Board } from './board.ts'
import { totalCost } from './cost.ts'
import { Graph, type Refinement } from './graph.ts'
import { costsOf, type PairCost, type Pairwise, pairwiseOf } from './pairwise.ts'
import { Prices } from './prices.ts'
import { countOf, orderOf, pairOf } from './refinements.ts'
import { Strip, toldWithin } from './strip-bound.ts'

export interface Proof extends Found {
  readonly proven: boolean
}

/** Boards of so many free cells are proven at most. */
export const mostProven = 25
/** What is looked at before it ends unproven, states of a strip and ways of the graph alike. */
const mostLooks = 8_000_000_000
/** A way of the graph takes so much longer to look at than a choice of a strip. */
const wayLooks = 12
/** Ways of the graph at a time: more do not fit well into memory. */
const mostWays = 8_000_000
/** So large a graph is swept once between two refinements; a smaller one, and pruned, three times. */
const manyWays = 400_000
/** States a place of the strips, one after another: the small one finds prices from which the large one goes on. */
const stripStates = [170_000, 1_800_000]
/** Sweeps of a strip at least and at most, and what they may look at together. */
const sweeps = { least: 3, most: 12, looks: 800_000_000 }
/** Sums of fractions lose so much of their value at most; those that a strip keeps in single precision, more. */
const rounding = { double: 1e-9, single: 1e-5 }

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

/**
 * Whether anything costs less than what is known. Cells are decided one after another. First only some pairs
 * are told, and types are taken as often as it pays, at prices (strip-bound.ts). What could still be better
 * becomes a graph (graph.ts), which is refined wherever its cheapest way goes wrong: where it pays for a
 * pair that is not told, or takes a type too often. When nothing is left, or the cheapest way goes wrong
 * nowhere, it is proven; after `looks` it ends unproven, with the best known.
 */
export function prove(board: Board, known: Found, looks = mostLooks): Proof {
  return new Proving(board, known, looks).run()
}

class Proving {
  readonly #board: Board
  readonly #problem: Pairwise
  readonly #lots: readonly number[][]
  readonly #prices: Prices
  readonly #step: number
  /** Of sums in double precision. Where costs are fractions, what is better by less is not worth a search. */
  readonly #exactly: number
  #known: Found
  #looks: number
  #untold: PairCost[] = []
  /** Types whose count the graph does not tell, each with how far off it was taken of late. */
  readonly #off: Map<number, number>

  constructor(board: Board, known: Found, looks: number) {
    const problem = pairwiseOf(board)
    this.#board = board
    this.#lots = alikeTypes(board, problem)
    this.#problem = turnedOnce(board, problem, this.#lots)
    this.#prices = new Prices(problem)
    this.#step = stepOf(problem)
    this.#exactly = this.#step > 0 ? rounding.double : -rounding.double
    this.#known = known
    this.#looks = looks
    this.#off = new Map([...problem.counts.keys()].map((t) => [t, 0]))
  }

  run(): Proof {
    const proven = this.#isProven()
    return { ...this.#known, proven }
  }

  #isProven(): boolean {
    const begun = this.#begin()
    if (typeof begun === 'boolean') return begun
    const graph = begun
    for (const lot of this.#lots) {
      graph.backward(this.#prices.now)
      if (!this.#refine(graph, orderOf(lot, this.#problem.types))) return false
    }
    for (;;) {
      const filling = this.#tighten(graph)
      if (!filling) return true
      const wrong = this.#wrongIn(filling)
      if (!wrong) {
        this.#keep(filling)
        return true
      }
      if (!this.#refine(graph, wrong)) return false
    }
  }

  /** The graph after the strips; true where they prove it alone, false where it is too much. */
  #begin(): Graph | boolean {
    const { pairs } = this.#problem
    const most = new Set(toldWithin(this.#problem, Math.max(...stripStates)))
    // Cells that touch and yet do not tell leave a floor far too low.
    if (pairs.some((pair) => pair.touch && !most.has(pair))) return false
    let told: readonly PairCost[] = []
    let strip: Strip | null = null
    for (const states of stripStates) {
      const more = toldWithin(this.#problem, states)
      if (strip && more.length === told.length) continue
      told = more
      strip = new Strip(this.#problem, told)
      if (this.#sweep(strip)) return true
      if (this.#looks <= 0) return false
    }
    this.#untold = pairs.filter((pair) => !told.includes(pair))
    strip!.backward(this.#prices.now)
    return Graph.of(strip!, this.#prices.now, this.#limit(rounding.single), mostWays) ?? false
  }

  /** What a cheapest way costs at most that leads to something better, at the prices of now. */
  #limit(margin: number): number {
    const { cost } = this.#known
    const paid = this.#prices.paid
    return cost + paid - this.#step + margin * (cost + Math.abs(paid))
  }

  /** Moves the prices; true where nothing better is left. */
  #sweep(strip: Strip): boolean {
    const prices = this.#prices
    const times = Math.floor(sweeps.looks / (2 * strip.looks))
    prices.restart()
    for (let n = Math.max(sweeps.least, Math.min(sweeps.most, times)); n > 0; n--) {
      this.#looks -= 2 * strip.looks
      if (this.#looks <= 0) return false
      const floor = strip.backward(prices.now) - prices.paid
      prices.tell(floor)
      if (strip.prune(prices.now, this.#limit(rounding.single)) === 0) return true
      prices.step(strip.filling(prices.now), floor, this.#known.cost)
    }
    prices.settle()
    return false
  }

  /** Moves the prices and prunes; the cheapest way's types, or null where none is left. */
  #tighten(graph: Graph): Int32Array | null {
    const prices = this.#prices
    prices.restart()
    const rounds = this.#off.size === 0 ? 0 : graph.ways > manyWays ? 1 : 3
    for (let round = 0; ; round++) {
      if (round === rounds && round > 0) prices.settle()
      const cost = graph.backward(prices.now)
      if (cost > this.#limit(this.#exactly)) return null
      const filling = graph.filling(prices.now)
      if (round === rounds) return filling
      prices.tell(cost - prices.paid)
      if (rounds > 1) graph.prune(prices.now, this.#limit(this.#exactly))
      this.#note(filling)
      prices.step(filling, cost - prices.paid, this.#known.cost)
    }
  }

  #note(filling: Int32Array): void {
    const taken = this.#taken(filling)
    for (const [t, off] of this.#off) {
      this.#off.set(t, 0.8 * off + (taken[t]! - this.#problem.counts[t]!) ** 2)
    }
  }

  #taken(filling: Int32Array): Int32Array {
    const taken = new Int32Array(this.#problem.types)
    for (const t of filling) taken[t]! += 1
    return taken
  }

  /** False where that would be too much. */
  #refine(graph: Graph, refinement: Refinement): boolean {
    const fits = graph.refine(refinement, this.#prices.now, this.#limit(this.#exactly), mostWays)
    return fits && wayLooks * graph.looked < this.#looks
  }

  /** What to tell next: the middle one of the pairs that a filling pays for, else the count most off. */
  #wrongIn(filling: Int32Array): Refinement | null {
    const problem = this.#problem
    const paid = this.#untold.filter((pair) => this.#costs(pair, filling) > 0)
    const pair = paid[paid.length >> 1]
    if (pair) {
      this.#untold = this.#untold.filter((other) => other !== pair)
      return pairOf(problem, pair)
    }
    const taken = this.#taken(filling)
    if (taken.every((n, t) => n === problem.counts[t])) return null
    const [type] = [...this.#off].reduce((most, one) => (one[1] > most[1] ? one : most))
    this.#off.delete(type)
    return countOf(problem, type)
  }

  #costs(pair: PairCost, filling: Int32Array): number {
    const { may } = this.#problem
    const { p, q } = pair
    const [t, u] = [may[p]!.indexOf(filling[p]!), may[q]!.indexOf(filling[q]!)]
    return costsOf(this.#problem, pair)[t * may[q]!.length + u]!
  }

  #keep(filling: Int32Array): void {
    const { cellAt, typeAt } = this.#problem
    const at = new Int32Array(this.#board.cells)
    filling.forEach((t, p) => {
      at[cellAt[p]!] = typeAt[t]!
    })
    const cost = totalCost(this.#board, at)
    if (cost < this.#known.cost) this.#known = { at, cost }
  }
}
