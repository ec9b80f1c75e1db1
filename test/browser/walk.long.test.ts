import { expect, test } from 'vitest'
import { patience, standReady, walkTen } from '../help/ten-garments.ts'

standReady()

const walks = [
  { script: true, width: 1280 },
  { script: false, width: 320 },
  { script: true, width: 320 },
] as const

test(
  'every walk ends with the same ten grades, with script and without, narrow and wide',
  async () => {
    const grades: string[][] = []
    for (const walk of walks) grades.push(await walkTen(walk))
    expect(grades[0]).toHaveLength(10)
    for (const other of grades) expect(other).toEqual(grades[0])
    expect(new Set(grades[0]!.map((line) => line.split(' ')[1]))).toEqual(
      new Set(['sound', 'care', 'eyes', 'home']),
    )
  },
  walks.length * patience,
)
