import { expect, test } from 'vitest'
import { patience, standReady, walkTen } from '../help/ten-garments.ts'

standReady()

test(
  'ten garments are walked from hello to packing list on a narrow phone, and all four grades are among them',
  async () => {
    const grades = await walkTen({ script: true, width: 320 })
    expect(grades).toHaveLength(10)
    expect(new Set(grades.map((line) => line.split(' ')[1]))).toEqual(
      new Set(['sound', 'care', 'eyes', 'home']),
    )
  },
  patience,
)
