/** Random numbers that a seed settles: even ones from 0 to 1, and ones with the mean 0 and the spread 1. */
export function randomFrom(seed: number): {
  readonly real: () => number
  readonly normal: () => number
} {
  let state = seed >>> 0 || 1
  const real = (): number => {
    state ^= state << 13
    state ^= state >>> 17
    state ^= state << 5
    return (state >>> 0) / 2 ** 32
  }
  const normal = (): number =>
    Math.sqrt(-2 * Math.log(real() + 1e-12)) * Math.cos(2 * Math.PI * real())
  return { real, normal }
}
