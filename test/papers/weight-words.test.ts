import { expect, test } from 'vitest'
import { weightWords } from '../../src/papers/weight-words.ts'

// The international pound is 0.453 592 37 kg exactly (NIST Handbook 44, appendix C; from memory, unverified).
test.each([
  ['en', 4535.9237, { kg: '4.5', lb: '10' }],
  ['es', 4535.9237, { kg: '4,5', lb: '10' }],
  ['en', 1000, { kg: '1', lb: '2.2' }],
])('in %s %d grams are told in both weights', (language, grams, words) => {
  expect(weightWords(grams, language)).toEqual(words)
})
