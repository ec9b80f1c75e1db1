import { expect, test } from 'vitest'
import { likelihoodOnLabel } from '../../src/textile/label/likely.ts'
import { readLines } from '../../src/textile/label-lines.ts'
import { type MootLine, settle } from '../../src/textile/label-sense.ts'

const line = (text: string, sure = 0.9, ...others: [text: string, sure: number][]): MootLine => ({
  text,
  sure,
  others: others.map(([other, likely]) => ({ text: other, sure: likely })),
})

const texts = (lines: readonly MootLine[]): string[] => settle(lines).map(({ text }) => text)

test('a word that labels print is likelier than one that they do not', () => {
  expect(likelihoodOnLabel('polyester')).toBeGreaterThan(likelihoodOnLabel('polyesler'))
  expect(likelihoodOnLabel('ALGODÓN')).toBeGreaterThan(likelihoodOnLabel('ALG0D0N'))
  expect(likelihoodOnLabel('50% lino')).toBeGreaterThan(likelihoodOnLabel('506 lino'))
  expect(likelihoodOnLabel('8 %')).toBeGreaterThan(likelihoodOnLabel('8 X'))
  // More than all of it is no share.
  expect(likelihoodOnLabel('796% lino')).toBeLessThan(likelihoodOnLabel('79% lino'))
  expect(likelihoodOnLabel('30°C')).toBe(0)
})

test('of two numbers the one is taken with which the shares add up', () => {
  const lines = [line('COTTON 93%'), line('ELASTANE 79%', 0.5, ['ELASTANE 7%', 0.4])]
  expect(settle(lines)).toEqual([
    { text: 'COTTON 93%', sure: 0.9 },
    { text: 'ELASTANE 7%', sure: 0.4 },
  ])
})

test('two numbers that are both another are found one after the other', () => {
  const lines = [
    line('80% WOOL'),
    line('16% NYLON', 0.6, ['15% NYLON', 0.3]),
    line('3% SILK', 0.6, ['5% SILK', 0.35]),
    line('60% WOOL', 0.6, ['80% WOOL', 0.3]),
    line('15% NYLON'),
    line('5% SILK'),
  ]
  const { blocks } = readLines(settle(lines))
  expect(blocks.map(({ fibres, total }) => [fibres.map(({ percent }) => percent), total])).toEqual([
    [[80, 15, 5], 100],
  ])
})

test('a number that was hardly seen makes the whole unsure, though it adds up', () => {
  const lines = [line('COTTON 93%'), line('ELASTANE 79%', 0.6, ['ELASTANE 7%', 0.1])]
  const reading = readLines(settle(lines))
  expect(reading.blocks[0]!.complete).toBe(true)
  expect(reading.sure).toBe(false)
})

test('what adds up, or would not either way, stays as it was read', () => {
  expect(texts([line('85% WOOL', 0.6, ['35% WOOL', 0.4]), line('15% SILK')])).toEqual([
    '85% WOOL',
    '15% SILK',
  ])
  expect(texts([line('85% WOOL', 0.6, ['35% WOOL', 0.4]), line('20% SILK')])).toEqual([
    '85% WOOL',
    '20% SILK',
  ])
  expect(settle([])).toEqual([])
})
