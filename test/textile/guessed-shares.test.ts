import { expect, test } from 'vitest'
import { readLabel } from '../../src/textile/label.ts'
import { readLines } from '../../src/textile/label-lines.ts'

const read = (...texts: string[]) => {
  const { blocks, sure, problems } = readLines(texts.map((text) => ({ text, sure: 1 })))
  return {
    sure,
    shares: blocks.map(({ fibres }) =>
      fibres.map(({ fibre, percent }) => `${percent} ${fibre}`).join(', '),
    ),
    codes: problems.map(({ code }) => code),
  }
}

// Invented labels, with slips as the reader of pictures makes them on print that is hard to see.
test.each([
  [['oox cotton', 'Machine wash 30°C'], '100 cotton'],
  [['aoo% Polyester'], null],
  [['BO KATOEN, 2O WOL', 'Size M'], '80 cotton, 20 wool'],
  [['SSX POLYESTER', '45% COTTON'], '55 polyester, 45 cotton'],
  [['GB 90 x Polyester - 1e x Wool'], '90 polyester, 10 wool'],
  [['COTTON 70X', 'COOL 29%', 'METALLIC 1%'], '70 cotton, 29 wool, 1 metallised'],
  [['55% FGLIESERE 30%', 'COTONE 15% ELASTAN'], '55 polyester, 30 cotton, 15 elastane'],
  [['75 % innen, 25 %', 'Katoen'], '75 linen, 25 cotton'],
  [['70% Visc059', '15% Acrylic', '15% Linen'], '70 viscose, 15 acrylic, 15 linen'],
  [['82 % COTTON/COTON', '13 % POLYESTER', '5 % WOOULAINE'], '82 cotton, 13 polyester, 5 wool'],
])(
  '%j: letters are taken for what they look like where that makes a whole, and asked about',
  (lines, shares) => {
    const { sure, shares: found, codes } = read(...lines)
    expect(sure).toBe(false)
    if (shares === null) return expect(found).toEqual([])
    expect(found).toEqual([shares])
    expect(codes).toContain('letters_unclear')
  },
)

test.each([
  [['so cotton', '30% wool']],
  [['20% GLOOP', '80% cotton']],
  [['10% HELD', '90% cotton']],
])('%j: no guess is taken that leaves something open', (lines) => {
  expect(read(...lines).codes).not.toContain('letters_unclear')
})

test('typed words are not guessed at', () => {
  expect(readLabel('SSX POLYESTER\n45% COTTON').blocks.some(({ total }) => total === 100)).toBe(
    false,
  )
})
