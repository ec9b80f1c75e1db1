import { middle } from '../bench/readings.ts'

/** What grows by no more than this share is flat. */
const flat = 0.1
/** A run of fewer readings is too short to tell: caches fill, and the heap has not yet found its size. */
const enough = 50

export interface Growth {
  /** In the middle of the second fifth of the readings, and of the last one. */
  readonly early: number
  readonly late: number
  /** Whether it is more than flat; of a run too short to tell: no. */
  readonly grew: boolean
}

/** How what a process holds has grown over readings at even distances. */
export function growthIn(readings: readonly number[]): Growth {
  const fifth = (nth: number) =>
    readings.slice(
      Math.floor((nth * readings.length) / 5),
      Math.floor(((nth + 1) * readings.length) / 5),
    )
  const [early, late] = [middle(fifth(1)), middle(fifth(4))]
  return { early, late, grew: readings.length >= enough && late > early * (1 + flat) }
}

/** A collection comes within so many readings. */
const between = 10

/** At each reading the lowest of it and those just before: what a collection leaves. */
export const lowest = (readings: readonly number[]): number[] =>
  readings.map((_, n) => Math.min(...readings.slice(Math.max(0, n - between + 1), n + 1)))

/** Growth in words. */
export const grownBy = (what: string, { early, late }: Growth): string =>
  `${what} grew from ${Math.round(early)} to ${Math.round(late)}`
