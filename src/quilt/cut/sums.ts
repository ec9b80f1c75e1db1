import type { PieceSize } from './panel.ts'

/** A size as it may lie on the cloth. */
export interface Way {
  readonly w: number
  readonly h: number
  readonly size: number
}

/** Every way a size may lie. */
export const waysOf = (pieces: readonly PieceSize[]): Way[] =>
  pieces.flatMap(({ w, h, rot }, size) =>
    rot && w !== h
      ? [
          { w, h, size },
          { w: h, h: w, size },
        ]
      : [{ w, h, size }],
  )

/** What pieces make side by side where they fit a depth. */
export interface Reach {
  /** The sums of their lengths, rising, 0 first. */
  readonly sums: Int32Array
  /** For each length, the largest sum that is no longer. */
  readonly floor: Int32Array
}

/** Lengths that pieces make side by side, by the depth that there is for them. */
export class Sums {
  readonly #lengths: readonly (readonly [length: number, depth: number])[]
  readonly #longest: number
  /** The same for depths that the same pieces fit. */
  readonly #byDepth: (Reach | undefined)[] = []

  constructor(lengths: readonly (readonly [number, number])[], longest: number) {
    this.#lengths = lengths
    this.#longest = longest
  }

  within(depth: number): Reach {
    const known = this.#byDepth[depth]
    if (known) return known
    const deepest = Math.max(0, ...this.#lengths.map(([, d]) => d).filter((d) => d <= depth))
    const reach = this.#byDepth[deepest] ?? this.#made(deepest)
    this.#byDepth[deepest] = reach
    this.#byDepth[depth] = reach
    return reach
  }

  #made(depth: number): Reach {
    const fitting = this.#lengths.filter(([, d]) => d <= depth).map(([length]) => length)
    const made = new Uint8Array(this.#longest + 1)
    const floor = new Int32Array(this.#longest + 1)
    made[0] = 1
    for (let at = 1; at <= this.#longest; at += 1) {
      if (fitting.some((length) => length <= at && made[at - length] === 1)) made[at] = 1
      floor[at] = made[at] === 1 ? at : floor[at - 1]!
    }
    return { sums: Int32Array.from([...made.keys()].filter((at) => made[at] === 1)), floor }
  }
}
