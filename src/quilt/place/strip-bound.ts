import type { PairCost, Pairwise } from './pairwise.ts'

/**
 * What the cells from a place on cost at least, once the types before it are known: exact in the pairs that
 * are told here, with every type as often as it pays, and each type at a price of its own that makes up for
 * being short or left over (Lagrange's multipliers).
 */
export interface Strip {
  /** What a piece of each type costs on top. */
  readonly prices: Float64Array
  /** For each place the least cost of the rest by the types at the edge of what is decided. */
  readonly rest: readonly Float64Array[]
}

/** The edge before a place: decided places that later ones still meet, each with its factor in the index. */
export interface Edge {
  readonly places: readonly number[]
  readonly factors: readonly number[]
  readonly states: number
}

/** What deciding a place costs, prepared: one row for each place at its edge. */
interface Stage {
  readonly types: Int32Array
  /** How much the next index grows by the place's own choice; 0 where nothing later meets it. */
  readonly ownFactor: number
  readonly rows: readonly {
    readonly choices: number
    readonly nextFactor: number
    /** By the choice at the edge, then by the choice here; null where the two do not meet. */
    readonly table: Float64Array | null
  }[]
}

/** A pair with what it costs by its types: `table[t × types + u]`, t in p and u in q. */
export interface Told extends PairCost {
  readonly table: Float64Array
}

/** What two cells cost across the edge that they share. */
export function edgeTable({ types }: Pairwise, { adj }: PairCost): Float64Array {
  return adj.length > 0 ? adj : new Float64Array(types * types)
}

/** What two cells cost together, the repeat with the edge. */
export function pairTable(problem: Pairwise, pair: PairCost): Float64Array {
  const { types, garment } = problem
  const table = edgeTable(problem, pair).slice()
  for (let t = 0; t < types; t++) {
    for (let u = 0; u < types; u++) {
      if (garment[t] === garment[u]) table[t * types + u]! += pair.repeat
    }
  }
  return table
}

/** The edge before every place, and after the last. */
export function edgesOf({ cells, may }: Pairwise, told: readonly PairCost[]): Edge[] {
  const last = new Int32Array(cells)
  for (const { p, q } of told) last[p] = Math.max(last[p]!, q)
  return Array.from({ length: cells + 1 }, (_, at) => {
    const places = Array.from({ length: at }, (_, p) => p).filter((p) => last[p]! >= at)
    let states = 1
    const factors = places.map((p) => {
      const factor = states
      states *= may[p]!.length
      return factor
    })
    return { places, factors, states }
  })
}

export class Strips {
  readonly edges: readonly Edge[]
  readonly #problem: Pairwise
  readonly #stages: readonly Stage[]

  constructor(problem: Pairwise, told: readonly Told[]) {
    this.#problem = problem
    this.edges = edgesOf(problem, told)
    const { cells, may, types } = problem
    const tables = new Map(told.map(({ p, q, table }) => [p * cells + q, table]))
    this.#stages = Array.from({ length: cells }, (_, q): Stage => {
      const after = this.edges[q + 1]!
      const factorAfter = (p: number): number => after.factors[after.places.indexOf(p)] ?? 0
      const rows = this.edges[q]!.places.map((p) => {
        const raw = tables.get(p * cells + q)
        const table = raw
          ? Float64Array.from(
              [...may[p]!].flatMap((t) => [...may[q]!].map((u) => raw[t * types + u]!)),
            )
          : null
        return { choices: may[p]!.length, nextFactor: factorAfter(p), table }
      })
      return { types: may[q]!, ownFactor: factorAfter(q), rows }
    })
  }

  /** The rest's least cost at the given prices, from the last place backwards. */
  at(prices: Float64Array): Strip {
    const rest: Float64Array[] = []
    rest[this.#problem.cells] = new Float64Array(1)
    for (let q = this.#problem.cells - 1; q >= 0; q--) {
      rest[q] = this.#back(q, rest[q + 1]!, prices)
    }
    return { prices, rest }
  }

  #back(q: number, after: Float64Array, prices: Float64Array): Float64Array {
    const { types, ownFactor, rows } = this.#stages[q]!
    const { states } = this.edges[q]!
    const out = new Float64Array(states)
    const digits = new Int32Array(rows.length)
    const meeting = rows.flatMap(({ table }, n) => (table ? [{ table, n }] : []))
    let next = 0
    for (let state = 0; state < states; state++) {
      let least = Infinity
      for (let c = 0; c < types.length; c++) {
        let cost = prices[types[c]!]! + after[next + c * ownFactor]!
        for (let m = 0; m < meeting.length; m++) {
          const { table, n } = meeting[m]!
          cost += table[digits[n]! * types.length + c]!
        }
        if (cost < least) least = cost
      }
      out[state] = least
      for (let n = 0; n < rows.length; n++) {
        const { choices, nextFactor } = rows[n]!
        digits[n]! += 1
        next += nextFactor
        if (digits[n]! < choices) break
        next -= choices * nextFactor
        digits[n] = 0
      }
    }
    return out
  }

  /** How often each type is taken by one cheapest filling at these prices. */
  taken({ prices, rest }: Strip): Float64Array {
    const { cells, types } = this.#problem
    const taken = new Float64Array(types)
    const choice = new Int32Array(cells)
    for (let q = 0; q < cells; q++) {
      const stage = this.#stages[q]!
      const { places } = this.edges[q]!
      let next = 0
      stage.rows.forEach(({ nextFactor }, n) => {
        next += choice[places[n]!]! * nextFactor
      })
      let least = Infinity
      stage.types.forEach((t, c) => {
        let cost = prices[t]! + rest[q + 1]![next + c * stage.ownFactor]!
        stage.rows.forEach(({ table }, n) => {
          if (table) cost += table[choice[places[n]!]! * stage.types.length + c]!
        })
        if (cost >= least) return
        least = cost
        choice[q] = c
      })
      taken[stage.types[choice[q]!]!]! += 1
    }
    return taken
  }
}

/** Steps of the prices at most, and how many states all steps together may look at. */
const rounds = 60
const mostLooks = 150_000_000
/** Tables kept for the search: each is right at another mixture of what is left. */
const kept = 8

const floorOf = ({ counts }: Pairwise, { prices, rest }: Strip): number =>
  rest[0]![0]! - prices.reduce((sum, price, t) => sum + price * counts[t]!, 0)

/** Moves the prices towards the highest floor, and keeps the best. */
export function strips(
  problem: Pairwise,
  told: readonly Told[],
): { edges: readonly Edge[]; best: readonly Strip[]; floor: number } {
  const all = new Strips(problem, told)
  const dearest = told.reduce((most, { table }) => Math.max(most, ...table), 1)
  const looks = all.edges.reduce((sum, { states }) => sum + states, 0) * problem.types
  const turns = Math.max(6, Math.min(rounds, Math.floor(mostLooks / (3 * looks))))
  const found: { strip: Strip; floor: number }[] = []
  let prices = new Float64Array(problem.types)
  for (let turn = 0; turn < turns; turn++) {
    const strip = all.at(prices)
    found.push({ strip, floor: floorOf(problem, strip) })
    const taken = all.taken(strip)
    const step = (dearest / 8) * 0.05 ** (turn / turns)
    prices = prices.map((price, t) => price + step * (taken[t]! - problem.counts[t]!))
  }
  found.sort((a, b) => b.floor - a.floor)
  const best = found.slice(0, kept).map(({ strip }) => strip)
  return { edges: all.edges, best, floor: found[0]!.floor }
}
