import { expect, test } from 'vitest'
import { pileCode, tagCode } from '../../src/base/tag.ts'

test('no two of the first 100,000 piles share a code', () => {
  const codes = Array.from({ length: 100_000 }, (_, at) => pileCode(at + 1))
  expect(new Set(codes).size).toBe(codes.length)
})

test('a code is read aloud without being taken for another: letter, digit, letter, digit', () => {
  const codes = Array.from({ length: 100_000 }, (_, at) => pileCode(at + 1))
  const spoken = /^([A-HJ-NP-RT-Y][2-9])+[A-HJ-NP-RT-Y]?$/
  expect(codes.filter((code) => !spoken.test(code))).toEqual([])
})

test.each([
  [1, 2, 'B2-2'],
  [22, 1, 'A3-1'],
  [175, 14, 'Y9-14'],
  [176, 1, 'A2B-1'],
])('pile %i, garment %i is %s', (pile, item, code) => {
  expect(tagCode(pile, item)).toBe(code)
})
