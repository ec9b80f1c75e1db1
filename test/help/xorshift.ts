/** Whole numbers below what is asked, by Marsaglia's xorshift32: the same numbers every time. */
export function random(seed: number): (below: number) => number {
  let state = seed
  return (below) => {
    state ^= state << 13
    state ^= state >>> 17
    state ^= state << 5
    return (state >>> 0) % below
  }
}
