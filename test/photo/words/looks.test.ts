import fc from 'fast-check'
import { expect, test } from 'vitest'
import { likeliestWays, type Step } from '../../../src/photo/words/beam.ts'
import { seenTogether } from '../../../src/photo/words/looks.ts'

/** A step with the letters of `letters` as likely as told, the likeliest first; `-` is no letter. */
const step = (letters: Readonly<Record<string, number>>): Step =>
  Object.entries(letters)
    .map(([letter, likely]) => ({ letter: letter === '-' ? '' : letter, likely }))
    .sort((a, b) => b.likely - a.likely)

const look = (...steps: Step[]) => ({ steps, along: steps.length })
const said = (steps: readonly Step[]) => likeliestWays(steps, 20)[0]!.text

test('what one look alone saw stays as it is', () => {
  const steps = [step({ A: 0.7, B: 0.3 }), step({ '-': 1 })]
  expect(seenTogether([look(...steps)])).toEqual(steps)
})

test('a letter that each of two looks doubts in another place is clear to both together', () => {
  const one = look(step({ Z: 0.6, '2': 0.4 }), step({ '5': 0.9, S: 0.1 }))
  const other = look(step({ '2': 0.9, Z: 0.1 }), step({ S: 0.6, '5': 0.4 }))
  expect([one, other].map(({ steps }) => said(steps))).toEqual(['Z5', '2S'])
  expect(said(seenTogether([one, other]))).toBe('25')
})

test('looks with other numbers of steps are laid beside each other by their place along the line', () => {
  const few = look(step({ A: 1 }), step({ B: 1 }))
  const many = look(step({ A: 1 }), step({ '-': 1 }), step({ B: 1 }), step({ '-': 1 }))
  expect(said(seenTogether([few, many]))).toBe('AB')
})

test('what was seen beyond the end of the line moves nothing', () => {
  const padded = {
    steps: [step({ A: 1 }), step({ B: 1 }), step({ '-': 1 }), step({ '-': 1 })],
    along: 2,
  }
  expect(said(seenTogether([padded, look(step({ A: 1 }), step({ B: 1 }))]))).toBe('AB')
})

// The mean of distributions is one (any textbook of probability, such as W. Feller's; from memory).
test('at each place the likelihoods of all letters still make one', () => {
  const any = fc.tuple(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 0, max: 9 }))
  const anyLook = fc
    .array(any, { minLength: 1, maxLength: 9 })
    .map((pairs) => look(...pairs.map(([a, b]) => step({ A: a / (a + b), B: b / (a + b) }))))
  fc.assert(
    fc.property(fc.array(anyLook, { minLength: 1, maxLength: 4 }), (looks) => {
      const together = seenTogether(looks)
      expect(together).toHaveLength(Math.max(...looks.map(({ steps }) => steps.length)))
      for (const guesses of together)
        expect(guesses.reduce((sum, { likely }) => sum + likely, 0)).toBeCloseTo(1, 10)
    }),
  )
})
