import { expect, test } from 'vitest'
import { type Facts, untold } from '../../src/garment/facts.ts'
import { grade } from '../../src/garment/grade.ts'
import { knowledge } from '../help/knowledge.ts'

const pile = { recipient: 'adult' } as const

/** Clean, washed, modern, sound and plain, with all the questions answered. */
const plain: Facts = {
  ...untold,
  kind: 'button-shirt',
  heat: 'hot',
  iron: 'warm',
  surface: 'woven',
  stretch: 'none',
  weight: 'medium',
  wear: 'sound',
  age: 'modern',
  pattern: 'stripe-check',
  oneWay: 'no',
  printMake: 'in-cloth',
  graphic: 'none',
  trims: 'removable',
  soil: 'clean',
  wash: 'washed',
  consent: 'yes',
  yield: 'enough',
}

test.each(['hot', 'warm'] as const)('a flannel shirt that may be ironed %s is sound', (iron) => {
  const { grade: given, press } = grade({ ...plain, iron }, pile, knowledge)
  expect(given).toBe('sound')
  expect(press).toMatchObject({ method: 'press', backing: 'none', interfacing: null })
})

test('nothing told means a person looks, nothing is fused, and every reason is named', () => {
  const { grade: given, flags, press } = grade(untold, { recipient: 'unknown' }, knowledge)
  expect(given).toBe('eyes')
  expect(press).toMatchObject({ method: 'do-not-press', backing: 'sewn-in', ceilingC: null })
  expect(flags.length).toBeGreaterThan(10)
})
