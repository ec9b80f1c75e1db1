import type { Strip } from './strip-bound.ts'

/** The beginnings that end before one place, each as a state, and the ways from it to the next place. */
interface Layer {
  readonly states: number
  /** State `s` has the ways `first[s]` up to `first[s + 1]`: each with its type, next state and cost. */
  readonly first: Int32Array
  readonly type: Uint16Array
  readonly to: Int32Array
  readonly cost: Float64Array
}

/** Something that states did not tell apart until now, as a number below `values` for each beginning. */
export interface Refinement {
  readonly values: number
  /** The number once type `t` lies in place `q`; −1 where that may not be. Before the first place it is 0. */
  readonly next: (value: number, q: number, t: number) => number
  /** What that costs which was not told before. */
  readonly extra: (value: number, q: number, t: number) => number
}

/** Collects the states and ways of one layer after another. */
class Collecting {
  readonly layers: Layer[] = []
  ways = 0
  #states = 0
  #length = 0
  #room = 1024
  #type = new Uint16Array(this.#room)
  #to = new Int32Array(this.#room)
  #cost = new Float64Array(this.#room)
  #first = new Int32Array(0)

  /** A layer of so many states. */
  layer(states: number): void {
    this.#first = new Int32Array(states + 1)
    this.#states = 0
    this.#length = 0
  }

  /** The ways that follow are the next state's. */
  state(): void {
    this.#first[this.#states++] = this.#length
  }

  way(type: number, to: number, cost: number): void {
    if (this.#length === this.#room) this.#grow()
    const n = this.#length++
    this.#type[n] = type
    this.#to[n] = to
    this.#cost[n] = cost
  }

  #grow(): void {
    this.#room *= 2
    const [type, to, cost] = [this.#type, this.#to, this.#cost]
    this.#type = new Uint16Array(this.#room)
    this.#to = new Int32Array(this.#room)
    this.#cost = new Float64Array(this.#room)
    this.#type.set(type)
    this.#to.set(to)
    this.#cost.set(cost)
  }

  end(): void {
    this.ways += this.#length
    this.#first[this.#states] = this.#length
    this.layers.push({
      states: this.#states,
      first: this.#first,
      type: this.#type.slice(0, this.#length),
      to: this.#to.slice(0, this.#length),
      cost: this.#cost.slice(0, this.#length),
    })
  }
}

/** States of one layer by a key below `keys`, numbered as they come, each with the least that is paid. */
class Numbered {
  count = 0
  readonly #number: Int32Array
  #key = new Int32Array(256)
  #paid = new Float64Array(256)

  constructor(keys: number) {
    this.#number = new Int32Array(keys).fill(-1)
  }

  of(key: number, paid: number): number {
    const known = this.#number[key]!
    if (known >= 0) {
      if (paid < this.#paid[known]!) this.#paid[known] = paid
      return known
    }
    if (this.count === this.#key.length) {
      const [keys, paids] = [this.#key, this.#paid]
      this.#key = new Int32Array(2 * this.count)
      this.#paid = new Float64Array(2 * this.count)
      this.#key.set(keys)
      this.#paid.set(paids)
    }
    this.#number[key] = this.count
    this.#key[this.count] = key
    this.#paid[this.count] = paid
    return this.count++
  }

  /** The keys by number, and what is paid; for when no more come. */
  get keys(): Int32Array {
    return this.#key.subarray(0, this.count)
  }

  get paid(): Float64Array {
    return this.#paid.subarray(0, this.count)
  }
}

function onlyState(): Numbered {
  const begin = new Numbered(1)
  begin.of(0, 0)
  return begin
}

const restsOf = (layers: readonly Layer[]): Float64Array[] =>
  layers.map(({ states }) => new Float64Array(states))

/**
 * Every beginning that could still lead to something better than what is known, in states that are told apart
 * only as far as needed: a state stands for all beginnings that it does not tell apart, and the cheapest way
 * through costs at most what the cheapest placement costs. Refined and pruned by turns it grows exact where
 * that matters and stays small (successive sublimation: Ibaraki, "Successive sublimation methods for dynamic
 * programming computation", Annals of Operations Research 11, 1987, 397–439).
 */
export class Graph {
  #layers: readonly Layer[]
  /** For each layer the least cost of the rest, by state, once `backward` was called. */
  #rest: readonly Float64Array[]
  /** Ways looked at until now. */
  looked = 0

  private constructor(layers: readonly Layer[]) {
    this.#layers = layers
    this.#rest = restsOf(layers)
  }

  /** Null where there would be more ways than `most`. `backward` of the strip was called at these prices. */
  static of(strip: Strip, prices: Float64Array, limit: number, most: number): Graph | null {
    const made = new Collecting()
    let states = onlyState()
    const costs = new Float64Array(prices.length)
    for (const [q, { types, ownFactor }] of strip.stages.entries()) {
      const rest = strip.rest[q + 1]!
      const later = new Numbered(rest.length)
      const { keys, paid: paids } = states
      made.layer(keys.length)
      for (let s = 0; s < keys.length; s++) {
        made.state()
        const next = strip.ways(q, keys[s]!, costs)
        for (let c = 0; c < types.length; c++) {
          const to = next + c * ownFactor
          const paid = paids[s]! + costs[c]! + prices[types[c]!]!
          if (paid + rest[to]! <= limit) made.way(types[c]!, later.of(to, paid), costs[c]!)
        }
      }
      made.end()
      if (made.ways > most) return null
      states = later
    }
    return new Graph(made.layers)
  }

  get ways(): number {
    return this.#layers.reduce((sum, { cost }) => sum + cost.length, 0)
  }

  /** The least cost of the whole at the given prices; ∞ where no way is left. */
  backward(prices: Float64Array): number {
    for (let q = this.#layers.length - 1; q >= 0; q--) {
      const { states, first, type, to, cost } = this.#layers[q]!
      const [rest, after] = [this.#rest[q]!, this.#rest[q + 1]]
      for (let s = 0; s < states; s++) {
        let least = Infinity
        const end = first[s + 1]!
        for (let a = first[s]!; a < end; a++) {
          const more = cost[a]! + prices[type[a]!]! + (after ? after[to[a]!]! : 0)
          if (more < least) least = more
        }
        rest[s] = least
      }
      this.looked += cost.length
    }
    return this.#rest[0]![0] ?? Infinity
  }

  /** Leaves out, after `backward` at the same prices, the ways that lead above the limit. */
  prune(prices: Float64Array, limit: number): void {
    const same: Refinement = { values: 1, next: () => 0, extra: () => 0 }
    this.refine(same, prices, limit, Infinity)
  }

  /**
   * Tells more apart and leaves out, after `backward` at the same prices, the ways that lead above the limit.
   * False where there would be more ways than `most`; the graph then stays as it was.
   */
  refine(
    { values, next, extra }: Refinement,
    prices: Float64Array,
    limit: number,
    most: number,
  ): boolean {
    const made = new Collecting()
    let states = onlyState()
    for (const [q, { first, type, to, cost }] of this.#layers.entries()) {
      const after = this.#rest[q + 1]
      const later = new Numbered(after ? after.length * values : values)
      const { keys, paid: paids } = states
      made.layer(keys.length)
      for (let s = 0; s < keys.length; s++) {
        made.state()
        const value = keys[s]! % values
        const state = (keys[s]! - value) / values
        const end = first[state + 1] ?? 0
        for (let a = first[state]!; a < end; a++) {
          const t = type[a]!
          const now = next(value, q, t)
          if (now < 0) continue
          const more = cost[a]! + extra(value, q, t)
          const paid = paids[s]! + more + prices[t]!
          if (paid + (after ? after[to[a]!]! : 0) > limit) continue
          made.way(t, later.of(after ? to[a]! * values + now : 0, paid), more)
        }
      }
      made.end()
      this.looked += 4 * made.layers[q]!.cost.length
      if (made.ways > most) return false
      states = later
    }
    this.#layers = made.layers
    this.#rest = restsOf(made.layers)
    return true
  }

  /** The types, place by place, of a cheapest way through, after `backward` at the same prices. */
  filling(prices: Float64Array): Int32Array {
    let state = 0
    return Int32Array.from(this.#layers, ({ first, type, to, cost }, q) => {
      let [least, best] = [Infinity, -1]
      for (let a = first[state]!; a < first[state + 1]!; a++) {
        const more = cost[a]! + prices[type[a]!]! + (this.#rest[q + 1]?.[to[a]!] ?? 0)
        if (more < least) [least, best] = [more, a]
      }
      state = to[best]!
      return type[best]!
    })
  }
}
