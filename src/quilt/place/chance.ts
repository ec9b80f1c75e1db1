/**
 * A seeded generator of whole numbers of 32 bits: xoshiro128** 1.1 by David Blackman and Sebastiano Vigna
 * ("Scrambled linear pseudorandom number generators", ACM Transactions on Mathematical Software 47(4),
 * 2021, article 36; their xoshiro128starstar.c is in the public domain). The same words begin the same row.
 */
export class Chance {
  readonly #s: Uint32Array

  constructor(words: readonly [number, number, number, number]) {
    this.#s = Uint32Array.from(words)
  }

  /** The next number, 0 to 2³² − 1. */
  next(): number {
    const s = this.#s
    const result = Math.imul(turned(Math.imul(s[1]!, 5), 7), 9) >>> 0
    const t = s[1]! << 9
    s[2]! ^= s[0]!
    s[3]! ^= s[1]!
    s[1]! ^= s[2]!
    s[0]! ^= s[3]!
    s[2]! ^= t
    s[3] = turned(s[3]!, 11)
    return result
  }

  /** 0 or above, below 1. */
  share(): number {
    return this.next() / 2 ** 32
  }

  /** A whole number from 0, below `n`. */
  below(n: number): number {
    return Math.floor(this.share() * n)
  }
}

const turned = (x: number, by: number): number => (x << by) | (x >>> (32 - by))

/** Spreads a number's bits: the last step of MurmurHash3 (Austin Appleby, public domain). */
function spread(x: number): number {
  let h = x >>> 0
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b)
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35)
  return (h ^ (h >>> 16)) >>> 0
}

/** The generator of a whole seed, and of the `nth` start from it. No seed gives four zeros, which would stay. */
export function chanceFrom(seed: number, nth = 0): Chance {
  const low = seed >>> 0
  const high = Math.floor(seed / 2 ** 32) >>> 0
  const word = (n: number): number => spread(low + spread(high + spread(nth * 8 + n)))
  return new Chance([word(1), word(2), word(3), word(4) | 1])
}
