import { readFileSync } from 'node:fs'

/** Memory is compared from here on: by then everything has been used once; so many readings at a time. */
const warm = 50

/** What a process holds in memory now and has held at most, MB (Linux: proc(5), `VmRSS` and `VmHWM`). */
export function memoryOf(pid: number | undefined): { readonly now: number; readonly most: number } {
  const status = readFileSync(`/proc/${pid}/status`, 'utf8')
  const of = (name: string) => Number(new RegExp(`^${name}:\\s+(\\d+) kB`, 'm').exec(status)![1])
  return { now: (of('VmRSS') * 1024) / 1e6, most: (of('VmHWM') * 1024) / 1e6 }
}

export const megabytes = (size: number): string => `${Math.round(size)} MB`

export const middle = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[values.length >> 1] ?? 0

const more = (now: number, before: number): string =>
  `${((now / before - 1) * 100).toFixed(1)} % more`

/** How what a process holds, MB after each reading, has grown. */
export function growthOf(memory: readonly number[]): string {
  const ends = `${megabytes(memory[0]!)} after the first, ${megabytes(memory.at(-1)!)} after the last`
  if (memory.length < 3 * warm) return ends
  const early = middle(memory.slice(warm, 2 * warm))
  const late = middle(memory.slice(-warm))
  return `${ends}; in the middle of readings ${warm + 1} to ${2 * warm} ${megabytes(early)}, of the last ${warm} ${megabytes(late)} (${more(late, early)}), ${more(Math.max(...memory.slice(warm)), memory[warm]!)} at most than after ${warm + 1}`
}

/** Median, 95th percentile and longest of readings that took so many ms each. */
export function timesOf(took: readonly number[]): string {
  const sorted = took.toSorted((a, b) => a - b)
  const at = (share: number) =>
    `${(sorted[Math.floor(share * (sorted.length - 1))]! / 1000).toFixed(2)} s`
  return `median ${at(0.5)}, p95 ${at(0.95)}, longest ${at(1)}`
}
