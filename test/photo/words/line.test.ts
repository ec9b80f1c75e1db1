import { expect, test } from 'vitest'
import { together } from '../../../src/photo/words/line.ts'
import type { ReadLine } from '../../../src/photo/words/spell.ts'
import { labelSense } from '../../../src/textile/label-sense.ts'

const { weigh } = labelSense

const line = (text: string, sure: number): ReadLine => ({ text, sure, letters: [], others: [] })

test('of two readings of a line the surer one stands', () => {
  const [blurred, clear] = [line('95% WOCL', 0.4), line('95% WOOL', 0.7)]
  expect(together([blurred, clear], weigh).text).toBe(clear.text)
  expect(together([clear, blurred], weigh).text).toBe(clear.text)
})

test('a word that labels print stands against one that was seen a little clearer', () => {
  const [known, unknown] = [line('71 % Poliamida', 0.3), line('71 % Polanda', 0.4)]
  expect(together([unknown, known], weigh).text).toBe(known.text)
  expect(together([unknown, { ...known, sure: 0.1 }], weigh).text).toBe(unknown.text)
})

test('two readings with different numbers leave both in doubt, and the other is told', () => {
  expect(together([line('95% WOOL', 0.5), line('35% WOOL', 0.4)], weigh)).toEqual({
    ...line('95% WOOL', expect.closeTo(0.1)),
    others: [{ text: '35% WOOL', sure: 0.4 }],
  })
})

test('a third reading stands by the numbers that it tells too, and never makes them surer than they were', () => {
  const [first, second] = [line('95% WOOL', 0.5), line('35% WOOL', 0.4)]
  expect(together([first, second, line('95% WOOI', 0.3)], weigh).sure).toBeCloseTo(0.4)
  expect(together([first, second, line('95% WOOI', 0.49)], weigh).sure).toBe(0.5)
  expect(together([first, second, line('35% WOOI', 0.3)], weigh).sure).toBe(0)
})
