import { expect, test } from 'vitest'
import { readLabel } from '../../src/textile/label.ts'
import { readLines } from '../../src/textile/label-lines.ts'

const lines = (...texts: string[]) => texts.map((text) => ({ text, sure: 1 }))

test('lines of a picture are read as typed lines are', () => {
  const words = ['60% COTTON', '40% POLYESTER', 'WARM IRON']
  expect(readLines(lines(...words))).toEqual(readLabel(words.join('\n')))
})

test('a share whose digits may be others makes the reading doubtful, and says why', () => {
  const [cotton, polyester] = lines('60% COTTON', '40% POLYESTER')
  const reading = readLines([{ ...cotton!, sure: 0.1 }, polyester!])
  expect(reading.blocks).toEqual(readLabel('60% COTTON\n40% POLYESTER').blocks)
  expect(reading).toMatchObject({ sure: false, problems: [{ code: 'letters_unclear' }] })
  expect(reading.confidence).toBeLessThan(0.7)
})

test('an unclear letter far from any share makes no share doubtful', () => {
  const reading = readLines([...lines('100% COTTON'), { text: 'LANTERN', sure: 0.1 }])
  expect(reading.problems.map(({ code }) => code)).not.toContain('letters_unclear')
})

test('no lines have no words', () => {
  expect(readLines([])).toMatchObject({ sure: false, problems: [{ code: 'no_words' }] })
})
