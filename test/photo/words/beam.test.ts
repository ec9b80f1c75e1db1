import fc from 'fast-check'
import { expect, test } from 'vitest'
import { likeliestWays, type Step } from '../../../src/photo/words/beam.ts'

/** A step on which each letter of `letters` is as likely as told, the likeliest first. */
const step = (letters: Readonly<Record<string, number>>): Step =>
  Object.entries(letters)
    .map(([letter, likely]) => ({ letter: letter === '-' ? '' : letter, likely }))
    .sort((a, b) => b.likely - a.likely)

/**
 * Connectionist temporal classification by its definition (A. Graves and others, "Connectionist Temporal
 * Classification", ICML 2006, equation 3; from memory): every path of one letter a step, runs made one letter,
 * then "no letter" left out; the likelihoods of all paths to one text are added.
 */
function byDefinition(steps: readonly Step[]): Map<string, number> {
  let paths: { text: string; last: string; likely: number }[] = [{ text: '', last: '', likely: 1 }]
  for (const guesses of steps) {
    paths = paths.flatMap(({ text, last, likely }) =>
      guesses.map((guess) => ({
        text: guess.letter === last ? text : text + guess.letter,
        last: guess.letter,
        likely: likely * guess.likely,
      })),
    )
  }
  const texts = new Map<string, number>()
  for (const { text, likely } of paths) texts.set(text, (texts.get(text) ?? 0) + likely)
  return texts
}

const anySteps = fc.array(
  fc.tuple(...['-', 'A', 'B'].map(() => fc.integer({ min: 1, max: 20 }))).map(([none, a, b]) => {
    const sum = none! + a! + b!
    return step({ '-': none! / sum, A: a! / sum, B: b! / sum })
  }),
  { minLength: 1, maxLength: 6 },
)

test('followed in full, the ways are all texts there are, each as likely as its paths together', () => {
  fc.assert(
    fc.property(anySteps, (steps) => {
      const texts = byDefinition(steps)
      const found = likeliestWays(steps, 10_000)
      expect(found.map(({ text }) => text).sort()).toEqual([...texts.keys()].sort())
      for (const { text, likely } of found) expect(likely).toBeCloseTo(texts.get(text)!, 10)
    }),
    { numRuns: 300 },
  )
})

test('the likeliest come first, and no more than asked for', () => {
  fc.assert(
    fc.property(anySteps, fc.integer({ min: 1, max: 5 }), (steps, most) => {
      const found = likeliestWays(steps, most).map(({ likely }) => likely)
      expect(found.length).toBeLessThanOrEqual(most)
      expect(found).toEqual(found.toSorted((a, b) => b - a))
    }),
  )
})

test('a letter twice needs a step without one in between', () => {
  const [held] = likeliestWays([step({ O: 1 }), step({ O: 1 })], 8)
  expect(held!.text).toBe('O')
  const [twice] = likeliestWays([step({ O: 1 }), step({ '-': 1 }), step({ O: 1 })], 8)
  expect(twice!.text).toBe('OO')
})

test('a gap stands where it is likely between two letters, though nothing is likelier there', () => {
  const gap = step({ '-': 0.9, ' ': 0.1 })
  const none = step({ '-': 0.99, ' ': 0.01 })
  expect(likeliestWays([step({ A: 1 }), gap, step({ B: 1 })], 8)[0]!.text).toBe('A B')
  expect(likeliestWays([step({ A: 1 }), none, step({ B: 1 })], 8)[0]!.text).toBe('AB')
})

test('of no steps the only way is no text', () => {
  expect(likeliestWays([], 8)).toEqual([{ text: '', likely: 1, letters: [] }])
})
