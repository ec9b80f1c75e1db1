import { expect, test } from 'vitest'
import { readLines } from '../../src/textile/label-lines.ts'

const madeOf = (...texts: string[]) => {
  const { blocks, sure } = readLines(texts.map((text) => ({ text, sure: 1 })))
  return {
    sure,
    shares: blocks.map(({ fibres }) =>
      fibres.map(({ fibre, percent }) => `${percent} ${fibre}`).join(', '),
    ),
  }
}

// Invented slips; the right reading is the one with which the shares are a whole.
test.each([
  [['Viscose 85%', 'Cotton 156'], '85 viscose, 15 cotton'],
  [
    ['60 % cotton/algodon', '399 polyamide/poliamida', '1 % elastane'],
    '60 cotton, 39 polyamide, 1 elastane',
  ],
  [['93% cotton', '5% polyester 24 elastane'], '93 cotton, 5 polyester, 2 elastane'],
  [['85N acrylic', '12N polyester', '3N elastane'], '85 acrylic, 12 polyester, 3 elastane'],
  [['95% cotton', '5° elastane'], '95 cotton, 5 elastane'],
  [['95% cotton', '2m silk', '3% elastane'], '95 cotton, 2 silk, 3 elastane'],
  [['75 cotton', '25% polyester'], '75 cotton, 25 polyester'],
  [['Cotton 55 1', 'Wool 39 1', 'Silk 61'], '55 cotton, 39 wool, 6 silk'],
  [['700% cotton'], '100 cotton'],
  [['6 3% polyamide', '37% acrylic'], '63 polyamide, 37 acrylic'],
  [['10 0% cotton'], '100 cotton'],
])('%s is read as %s', (lines, shares) => {
  expect(madeOf(...lines, 'Machine wash 30°C', 'Size M 40', 'RN 076')).toEqual({
    sure: true,
    shares: [shares],
  })
})

test.each([
  [['Viscose 85%', 'Cotton 256']],
  [['70% cotton', '36% modal']],
  [['60% cotton', '4 silk']],
])('%s add up in no way, and are asked about', (lines) => {
  expect(madeOf(...lines).sure).toBe(false)
})

test('a whole make-up is left as it is, whatever other numbers stand by', () => {
  expect(madeOf('100% cotton', 'Polyester 406')).toMatchObject({ shares: ['100 cotton'] })
  expect(madeOf('80% cotton', '20% wool 30°C')).toMatchObject({ shares: ['80 cotton, 20 wool'] })
})

test('a slash between names that was read as a letter is one', () => {
  expect(madeOf('92%ACRYLICIACRILICA/', 'POLYACRYL', '8 %ELASTANE/ELASTAN')).toEqual({
    sure: true,
    shares: ['92 acrylic, 8 elastane'],
  })
})
