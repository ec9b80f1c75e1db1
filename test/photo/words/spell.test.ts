import { expect, test } from 'vitest'
import type { Step } from '../../../src/photo/words/beam.ts'
import { spelled } from '../../../src/photo/words/spell.ts'
import { labelSense } from '../../../src/textile/label-sense.ts'

const { weigh } = labelSense
const plain = () => 0

/** Steps that show a text, with other letters at some places: `at` counts the text's signs. */
function steps(text: string, others: Readonly<Record<number, [string, number]>> = {}): Step[] {
  return [...text].flatMap((sign, at): Step[] => {
    if (sign === ' ') return [[{ letter: ' ', likely: 1 }]]
    const [other, likely] = others[at] ?? ['', 0]
    const seen = [
      { letter: sign, likely: 1 - likely },
      { letter: other, likely },
    ].sort((a, b) => b.likely - a.likely)
    return [seen.filter((guess) => guess.likely > 0), [{ letter: '', likely: 1 }]]
  })
}

test('what is clear is read as it stands, word by word', () => {
  expect(spelled(steps('IRON LOW'), weigh)).toEqual({
    text: 'IRON LOW',
    letters: [1, 1, 1, 1, 1, 1, 1],
    sure: 1,
    others: [],
  })
})

test('of two ways the one that labels print is taken, though another is a little likelier', () => {
  expect(spelled(steps('POLYANIDE', { 5: ['M', 0.4] }), weigh).text).toBe('POLYAMIDE')
  expect(spelled(steps('75X LYOCELL', { 2: ['%', 0.3] }), weigh).text).toBe('75% LYOCELL')
  // Without anything known of labels the likelier one is taken.
  expect(spelled(steps('POLYANIDE', { 5: ['M', 0.4] }), plain).text).toBe('POLYANIDE')
})

test('what is hardly to be seen is not taken, whatever it would say', () => {
  expect(spelled(steps('POLYANIDE', { 5: ['M', 0.01] }), weigh).text).toBe('POLYANIDE')
})

test('a percent sign that stands apart from its number is weighed with it', () => {
  expect(spelled(steps('22 X ACRYLIC', { 3: ['%', 0.3] }), weigh).text).toBe('22 % ACRYLIC')
  expect(spelled(steps('SIZE X', { 5: ['%', 0.3] }), weigh).text).toBe('SIZE X')
})

test('no word chooses between two numbers: the other is told, with how sure it is', () => {
  const { text, sure, others } = spelled(steps('85% WOOL', { 0: ['3', 0.4] }), weigh)
  expect(text).toBe('85% WOOL')
  expect(sure).toBeCloseTo(0.6)
  expect(others).toEqual([{ text: '35% WOOL', sure: expect.closeTo(0.4) }])
})

test('a letter that decides a word is as sure as the word', () => {
  const doubtful = spelled(steps('QUX', { 1: ['O', 0.45] }), weigh)
  expect(doubtful.sure).toBeCloseTo(0.55)
})

test('a Chinese sign on a line of Latin letters is none unless it is sure', () => {
  const line = steps('ACRYLIC 8 年', { 10: ['X', 0.3] })
  expect(spelled(line, plain).text).toBe('ACRYLIC 8 X')
  expect(spelled(steps('WOOL 毛'), plain).text).toBe('WOOL 毛')
  expect(spelled(steps('アイロンは低温'), plain).text).toBe('アイロンは低温')
})

test('of nothing there is nothing to read', () => {
  expect(spelled([], weigh)).toEqual({ text: '', letters: [], sure: 1, others: [] })
})
