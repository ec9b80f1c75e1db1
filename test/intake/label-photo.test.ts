import { expect, test } from 'vitest'
import { judge, wordsSeen } from '../../src/intake/label-photo.ts'
import { readLabel } from '../../src/textile/label.ts'

const seen = (...texts: string[]) => ({
  lines: texts.map((text) => ({ text, sure: 0.9 })),
  faults: [],
})

test.each([
  [['60% COTTON', '40% POLYESTER', 'WARM IRON']],
  // Signs that the reader takes for "%", and for letters.
  [['856 Cotton', '15% Wool', 'Cool lron']],
  [['75X LYOCELL', '20N COTTON', '5° ELASTANE', 'IRONATLOW TEMPERATURE']],
  [['10096 cashmere', 'hand wash only']],
])('what is said of %j is what the words in the field will say', (texts) => {
  const { words, reading, verdict } = judge(seen(...texts), 2000)
  expect(verdict).toBe('sure')
  expect(wordsSeen(seen(...texts), 2000)).toBe(words)
  const typed = readLabel(words)
  expect(typed.blocks).toEqual(reading.blocks)
  expect(typed.iron.level).toBe(reading.iron.level)
  expect(typed.sure).toBe(true)
})

test('words beyond the longest answer are left out, and none are none', () => {
  expect(
    [...judge(seen(...Array<string>(300).fill('100% COTTON')), 2000).words].length,
  ).toBeLessThan(2001)
  expect(judge(seen(), 2000)).toMatchObject({ words: '', verdict: 'none' })
})
