import { costsOf, type PairCost, type Pairwise } from './pairwise.ts'

/** The edge before a place: decided places that later ones still meet, each with its factor in the index. */
interface Edge {
  readonly places: readonly number[]
  readonly factors: readonly number[]
  readonly states: number
}

/** A place at the edge, as the next one is decided. */
interface Row {
  readonly choices: number
  /** How much the next index grows by its choice; 0 where nothing later meets it. */
  readonly nextFactor: number
  /** By the choice at the edge, then by the choice here; null where the two do not meet. */
  readonly table: Float64Array | null
}

/** What deciding a place costs, prepared. */
export interface Stage {
  readonly types: Int32Array
  /** How much the next index grows by the place's own choice; 0 where nothing later meets it. */
  readonly ownFactor: number
  /** The oldest place at the edge, which is mostly forgotten here, apart from the others. */
  readonly oldest: Row & { readonly table: Float64Array }
  readonly rows: readonly Row[]
}

/** The pairs that can be told with so many states a place: those that touch first, then the dearest repeats. */
export function toldWithin({ cells, may, pairs }: Pairwise, mostStates: number): PairCost[] {
  const states = new Float64Array(cells + 1).fill(1)
  const last = Int32Array.from({ length: cells }, (_, p) => p)
  const order = [...pairs].sort(
    (a, b) =>
      Number(b.touch) - Number(a.touch) ||
      b.repeat - a.repeat ||
      a.q - a.p - (b.q - b.p) ||
      a.p - b.p,
  )
  return order.filter(({ p, q }) => {
    const choices = may[p]!.length
    for (let at = last[p]! + 1; at <= q; at++) {
      if (states[at]! * choices > mostStates) return false
    }
    for (; last[p]! < q; last[p]!++) states[last[p]! + 1]! *= choices
    return true
  })
}

/** The edge before every place, and after the last. */
function edgesOf({ cells, may }: Pairwise, told: readonly PairCost[]): Edge[] {
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

const noRow: Row = { choices: 1, nextFactor: 0, table: null }

function stagesOf(problem: Pairwise, told: readonly PairCost[], edges: readonly Edge[]): Stage[] {
  const { cells, may } = problem
  const tables = new Map(told.map((pair) => [pair.p * cells + pair.q, costsOf(problem, pair)]))
  return Array.from({ length: cells }, (_, q): Stage => {
    const after = edges[q + 1]!
    const factors = new Map(after.places.map((p, n) => [p, after.factors[n]!]))
    const [oldest = noRow, ...rows] = edges[q]!.places.map((p) => ({
      choices: may[p]!.length,
      nextFactor: factors.get(p) ?? 0,
      table: tables.get(p * cells + q) ?? null,
    }))
    const table = oldest.table ?? new Float64Array(oldest.choices * may[q]!.length)
    return {
      types: may[q]!,
      ownFactor: factors.get(q) ?? 0,
      oldest: { ...oldest, table },
      rows,
    }
  })
}

/**
 * What the cells from a place on cost at least, by the types at the edge of what is decided: exact in the
 * pairs that are told here, with every type as often as it pays, and each type at a price of its own that
 * makes up for being short or left over (Lagrange's multipliers). A state through which nothing better than
 * what is known can lead is left out for good: the rest grows dearer by it.
 */
export class Strip {
  readonly stages: readonly Stage[]
  /** For each place the least cost of the rest, by state; ∞ where the state is left out. */
  readonly rest: Float32Array[]
  /** States times choices: what one sweep looks at. */
  readonly looks: number

  constructor(problem: Pairwise, told: readonly PairCost[]) {
    const edges = edgesOf(problem, told)
    this.stages = stagesOf(problem, told, edges)
    this.rest = edges.map(({ states }) => new Float32Array(states))
    this.looks = this.stages.reduce((sum, { types }, q) => sum + types.length * edges[q]!.states, 0)
  }

  /** The rest's least cost at the given prices, from the last place backwards; the whole board's cost. */
  backward(prices: Float64Array): number {
    for (let q = this.stages.length - 1; q >= 0; q--) {
      const { types, ownFactor, oldest } = this.stages[q]!
      const [out, after] = [this.rest[q]!, this.rest[q + 1]!]
      const choices = types.length
      const from = new Float64Array(choices)
      this.#eachGroup(q, prices, (group, next, costs) => {
        let fresh = -1
        for (let o = 0; o < oldest.choices; o++) {
          const state = group * oldest.choices + o
          if (out[state] === Infinity) continue
          const to = next + o * oldest.nextFactor
          if (fresh !== to) {
            for (let c = 0; c < choices; c++) from[c] = costs[c]! + after[to + c * ownFactor]!
            fresh = to
          }
          let least = Infinity
          for (let c = 0; c < choices; c++) {
            const cost = from[c]! + oldest.table[o * choices + c]!
            if (cost < least) least = cost
          }
          out[state] = least
        }
      })
    }
    return this.rest[0]![0]!
  }

  /** Leaves out, after `backward` at the same prices, what leads above the limit. How many states are left. */
  prune(prices: Float64Array, limit: number): number {
    let paid = new Float32Array(1)
    let left = 0
    for (let q = 0; q < this.stages.length; q++) {
      const { types, ownFactor, oldest } = this.stages[q]!
      const rest = this.rest[q]!
      const next = new Float32Array(this.rest[q + 1]!.length).fill(Infinity)
      const choices = types.length
      const least = new Float64Array(choices)
      this.#eachGroup(q, prices, (group, begin, costs) => {
        const keep = (to: number): void => {
          for (let c = 0; c < choices; c++) {
            const at = to + c * ownFactor
            const cost = least[c]! + costs[c]!
            if (cost < next[at]!) next[at] = cost
          }
          least.fill(Infinity)
        }
        least.fill(Infinity)
        let any = false
        for (let o = 0; o < oldest.choices; o++) {
          const state = group * oldest.choices + o
          if (rest[state] === Infinity) continue
          if (paid[state]! + rest[state]! > limit) {
            rest[state] = Infinity
            continue
          }
          left++
          any = true
          for (let c = 0; c < choices; c++) {
            const cost = paid[state]! + oldest.table[o * choices + c]!
            if (cost < least[c]!) least[c] = cost
          }
          if (oldest.nextFactor > 0) keep(begin + o * oldest.nextFactor)
        }
        if (any && oldest.nextFactor === 0) keep(begin)
      })
      paid = next
    }
    return left
  }

  /**
   * Each group of states, not all left out, that differ in the oldest place alone: its number, the next index without the oldest
   * and the own choice, and what each choice costs beside the other places at the edge.
   */
  #eachGroup(
    q: number,
    prices: Float64Array,
    visit: (group: number, next: number, costs: Float64Array) => void,
  ): void {
    const { types, oldest, rows } = this.stages[q]!
    const rest = this.rest[q]!
    const groups = rest.length / oldest.choices
    const meeting = rows.flatMap(({ table }, n) => (table ? [{ table, n }] : []))
    const digits = new Int32Array(rows.length)
    const own = Float64Array.from(types, (t) => prices[t]!)
    const costs = new Float64Array(types.length)
    let next = 0
    for (let group = 0; group < groups; group++) {
      let from = group * oldest.choices
      const end = from + oldest.choices
      while (from < end && rest[from] === Infinity) from++
      if (from < end) {
        costs.set(own)
        for (let m = 0; m < meeting.length; m++) {
          const { table, n } = meeting[m]!
          const row = digits[n]! * types.length
          for (let c = 0; c < types.length; c++) costs[c]! += table[row + c]!
        }
        visit(group, next, costs)
      }
      for (let n = 0; n < rows.length; n++) {
        const { choices, nextFactor } = rows[n]!
        digits[n]! += 1
        next += nextFactor
        if (digits[n]! < choices) break
        next -= choices * nextFactor
        digits[n] = 0
      }
    }
  }

  /** Where a state leads and what it costs, each choice at its place: the next index, and the costs told. */
  ways(q: number, state: number, costs: Float64Array): number {
    const { types, oldest, rows } = this.stages[q]!
    let left = state
    let next = 0
    costs.fill(0, 0, types.length)
    for (const { choices, nextFactor, table } of [oldest, ...rows]) {
      const digit = left % choices
      left = (left - digit) / choices
      next += digit * nextFactor
      if (!table) continue
      for (let c = 0; c < types.length; c++) costs[c]! += table[digit * types.length + c]!
    }
    return next
  }

  /** The types, place by place, of a cheapest filling, after `backward` at the same prices. */
  filling(prices: Float64Array): Int32Array {
    const at = new Int32Array(this.stages.length)
    let state = 0
    this.stages.forEach(({ types, ownFactor }, q) => {
      const costs = new Float64Array(types.length)
      const next = this.ways(q, state, costs)
      let least = Infinity
      types.forEach((t, c) => {
        const to = next + c * ownFactor
        const cost = costs[c]! + prices[t]! + this.rest[q + 1]![to]!
        if (cost >= least) return
        least = cost
        at[q] = t
        state = to
      })
    })
    return at
  }
}
