import { expect, test } from 'vitest'
import { Chance, chanceFrom } from '../../../src/quilt/place/chance.ts'

// The first numbers of xoshiro128** 1.1 from the words 1, 2, 3, 4, as its authors' xoshiro128starstar.c
// gives them: the reference test of the Rust crate rand_xoshiro, which names that file.
const reference = [
  11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597,
  4258142804,
]

test('gives the numbers of its authors', () => {
  const chance = new Chance([1, 2, 3, 4])
  expect(reference.map(() => chance.next())).toEqual(reference)
})

test.each([0, 1, -1, 2 ** 32, 2 ** 53 - 1, -(2 ** 53) + 1])(
  'the seed %d gives one row, and shares from 0 to below 1',
  (seed) => {
    const row = (nth: number) => {
      const chance = chanceFrom(seed, nth)
      return Array.from({ length: 20 }, () => chance.share())
    }
    expect(row(0)).toEqual(row(0))
    expect(row(1)).not.toEqual(row(0))
    expect(row(0).every((share) => share >= 0 && share < 1)).toBe(true)
    expect(new Set(row(0)).size).toBe(20)
  },
)

test('whole numbers below a bound come up about as often', () => {
  const chance = chanceFrom(3)
  const often = [0, 0, 0, 0, 0]
  for (let n = 0; n < 50_000; n++) often[chance.below(5)]! += 1
  // 10,000 each; three standard deviations are 268.
  for (const times of often) expect(Math.abs(times - 10_000)).toBeLessThan(400)
})
