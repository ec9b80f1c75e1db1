import { random } from './xorshift.ts'

/** What is drawn by chance, the same for the same seeds. */
export interface Chance {
  /** A whole number from `least` to `most`, both included. */
  whole(least: number, most: number): number
  /** A number from `least` up to `most`. */
  real(least: number, most: number): number
  /** True so often, 0 to 1. */
  happens(share: number): boolean
  one<T>(among: readonly T[]): T
  /** So many of them, in an order of chance. */
  some<T>(among: readonly T[], count: number): T[]
  /** One of the names, each as often as its weight among all. */
  weighed<T extends string>(weights: Readonly<Record<T, number>>): T
}

const fine = 2 ** 24

/** Several seeds make one: a set's, a photo's, a try's. */
export function chanceOf(...seeds: readonly number[]): Chance {
  const mixed = seeds.reduce((hash, seed) => Math.imul(hash ^ seed, 0x9e3779b1) ^ (hash >>> 15), 17)
  const next = random(mixed | 1)
  // Seeds that lie close together give first numbers that do too.
  for (let i = 0; i < 8; i++) next(fine)

  const real = (least: number, most: number) => least + ((most - least) * next(fine)) / fine
  const whole = (least: number, most: number) => least + next(most - least + 1)
  const one = <T>(among: readonly T[]): T => among[next(among.length)]!
  return {
    whole,
    real,
    happens: (share) => real(0, 1) < share,
    one,
    some(among, count) {
      const left = [...among]
      return Array.from({ length: Math.min(count, left.length) }, () =>
        left.splice(next(left.length), 1),
      ).flat()
    },
    weighed<T extends string>(weights: Readonly<Record<T, number>>): T {
      const entries = Object.entries<number>(weights) as [T, number][]
      let at = real(
        0,
        entries.reduce((sum, [, weight]) => sum + weight, 0),
      )
      for (const [name, weight] of entries) {
        at -= weight
        if (at < 0) return name
      }
      return entries[0]![0]
    },
  }
}
