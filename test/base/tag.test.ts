import { expect, test } from 'vitest'
import { checkedTag, checkSign, pileCode, tagCode } from '../../src/base/tag.ts'

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

test('a check sign is that of ISO 7064, MOD 37,36', () => {
  // The identifier that the GRid standard (version 2.1, the music trade's release identifier) shows as its example:
  // A1-2425G-ABC1234002-M, of the same system; from memory.
  expect(checkSign('A1-2425G-ABC1234002')).toBe('M')
})

test('one wrong sign in any code makes another check sign', () => {
  const signs = [...'0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ']
  for (const code of [1, 22, 175, 9_999].flatMap((pile) =>
    [1, 7, 14, 230].map((n) => tagCode(pile, n)),
  )) {
    for (const [at, right] of [...code].entries()) {
      if (right === '-') continue
      for (const wrong of signs) {
        if (wrong === right) continue
        const typed = code.slice(0, at) + wrong + code.slice(at + 1)
        expect(checkSign(typed), `${typed} for ${code}`).not.toBe(checkSign(code))
      }
    }
  }
})

test('a tag has its code and its check sign', () => {
  expect(checkedTag('B2-1')).toBe('B2-1-D')
})
