import { expect, test } from 'vitest'
import { better } from '../../../src/photo/words/line.ts'
import type { ReadLine } from '../../../src/photo/words/spell.ts'
import { labelSense } from '../../../src/textile/label-sense.ts'

const { weigh } = labelSense

const line = (text: string, sure: number): ReadLine => ({ text, sure, letters: [], others: [] })

test('of two readings of a line the surer one stands', () => {
  const [blurred, clear] = [line('95% WOCL', 0.4), line('95% WOOL', 0.7)]
  expect(better(blurred, clear, weigh)).toBe(clear)
  expect(better(clear, blurred, weigh)).toBe(clear)
})

test('a word that labels print stands against one that was seen a little clearer', () => {
  const [known, unknown] = [line('71 % Poliamida', 0.3), line('71 % Polanda', 0.4)]
  expect(better(unknown, known, weigh)).toBe(known)
  expect(better(unknown, { ...known, sure: 0.1 }, weigh)).toBe(unknown)
})

test('two readings with different numbers leave both in doubt, and the other is told', () => {
  expect(better(line('95% WOOL', 0.5), line('35% WOOL', 0.4), weigh)).toEqual({
    ...line('95% WOOL', expect.closeTo(0.1)),
    others: [{ text: '35% WOOL', sure: 0.4 }],
  })
})
