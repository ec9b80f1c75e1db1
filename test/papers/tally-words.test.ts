import { expect, test } from 'vitest'
import { tallyWords } from '../../src/papers/tally-words.ts'
import { layouts } from '../help/knowledge.ts'

const say = (key: string) => key

test.each([
  [{ low: 3, high: 9 }, 'count.more'],
  [{ low: 0, high: 5 }, 'count.more'],
  [{ low: 8, high: 99 }, 'count.more_open'],
  [{ low: 7, high: 7 }, 'count.more_about'],
  [{ low: 0, high: 0 }, 'count.more'],
])('of %o more garments is said %s', (more, key) => {
  const tally = { good: 2, maybe: 0, home: 0, suits: 2, pieces: [], more, enough: false }
  const words = tallyWords(tally, { layout: layouts[0]!, size: 'throw', quilts: 1 }, say)
  expect(words).toBe(`count.wants ${key}`)
})
