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

/** Lengths that pieces make side by side, by the depth that there is for them. */
export class Sums {
  readonly #lengths: readonly (readonly [length: number, depth: number])[]
  readonly #longest: number
  /** For each depth the sums, rising, 0 first; the same list for depths that the same pieces fit. */
  readonly #byDepth: (Int32Array | undefined)[] = []

  constructor(lengths: readonly (readonly [number, number])[], longest: number) {
    this.#lengths = lengths
    this.#longest = longest
  }

  within(depth: number): Int32Array {
    const known = this.#byDepth[depth]
    if (known) return known
    const reach = Math.max(0, ...this.#lengths.map(([, d]) => d).filter((d) => d <= depth))
    const sums = this.#byDepth[reach] ?? this.#made(reach)
    this.#byDepth[reach] = sums
    this.#byDepth[depth] = sums
    return sums
  }

  #made(depth: number): Int32Array {
    const fitting = this.#lengths.filter(([, d]) => d <= depth).map(([length]) => length)
    const made = new Uint8Array(this.#longest + 1)
    made[0] = 1
    for (let at = 1; at <= this.#longest; at += 1) {
      if (fitting.some((length) => length <= at && made[at - length] === 1)) made[at] = 1
    }
    return Int32Array.from([...made.keys()].filter((at) => made[at] === 1))
  }
}
