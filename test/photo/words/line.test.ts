import { expect, test } from 'vitest'
import { surer } from '../../../src/photo/words/line.ts'
import type { ReadLine } from '../../../src/photo/words/spell.ts'

const line = (text: string, sure: number): ReadLine => ({ text, sure, letters: [], others: [] })

test('of two readings of a line the surer one stands', () => {
  const [blurred, clear] = [line('95% WOCL', 0.4), line('95% WOOL', 0.7)]
  expect(surer(blurred, clear)).toBe(clear)
  expect(surer(clear, blurred)).toBe(clear)
})

test('two readings with different numbers leave both in doubt, and the other is told', () => {
  expect(surer(line('95% WOOL', 0.5), line('35% WOOL', 0.4))).toEqual({
    ...line('95% WOOL', expect.closeTo(0.1)),
    others: [{ text: '35% WOOL', sure: 0.4 }],
  })
})
