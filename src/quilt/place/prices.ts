import type { Pairwise } from './pairwise.ts'

/**
 * A step goes so far of the way to the known cost, at first; less far once prices are known from a rougher
 * look, and so much less where two steps in a row win nothing.
 */
const boldness = { first: 1, again: 0.5, sink: 0.7 }
/** How much of the last direction is kept: neighbouring steps would else swing to and fro. */
const kept = 0.5

/**
 * What a piece of each type costs on top while types are taken as often as it pays, moved towards the
 * highest floor by steps along what is short or left over (subgradients; Polyak, "Minimization of unsmooth
 * functionals", USSR Computational Mathematics and Mathematical Physics 9(3), 1969, 14–29).
 */
export class Prices {
  /** The prices of now, and the best of this round. */
  now: Float64Array
  best: Float64Array
  floor = -Infinity
  readonly #counts: Int32Array
  #direction: Float64Array
  #boldness = boldness.first
  #vain = 0
  #told = false

  constructor({ counts, types }: Pairwise) {
    this.#counts = counts
    this.now = new Float64Array(types)
    this.best = this.now
    this.#direction = new Float64Array(types)
  }

  /** What all pieces pay on top: costs at these prices are that much too high. */
  get paid(): number {
    return this.now.reduce((sum, price, t) => sum + price * this.#counts[t]!, 0)
  }

  /** A new round: what is looked at has changed. */
  restart(): void {
    this.floor = -Infinity
    this.#direction.fill(0)
    this.#boldness = this.#told ? boldness.again : boldness.first
    this.#vain = 0
  }

  /** Takes what was found at the prices of now: the least cost without what is paid on top. */
  tell(floor: number): void {
    this.#told = true
    if (floor > this.floor) {
      this.floor = floor
      this.best = this.now
      this.#vain = 0
    } else if (++this.#vain >= 2) {
      this.#boldness *= boldness.sink
      this.#vain = 0
    }
  }

  /** The next prices, from a cheapest filling at those of now. */
  step(filling: Int32Array, floor: number, known: number): void {
    const taken = new Float64Array(this.now.length)
    for (const t of filling) taken[t]! += 1
    this.#direction = taken.map((n, t) => n - this.#counts[t]! + kept * this.#direction[t]!)
    const length = this.#direction.reduce((sum, x) => sum + x * x, 0)
    if (length === 0) return
    const by = (this.#boldness * Math.max(0, known - floor)) / length
    this.now = this.now.map((price, t) => price + by * this.#direction[t]!)
  }

  settle(): void {
    this.now = this.best
  }
}
