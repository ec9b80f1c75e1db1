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

// Invented labels on each of which one share was not seen: under a finger, in a fold, in the glare.
test.each([
  [['99% polyester', 'élasthanne', 'Laver à 30°C'], ['99 polyester, 1 elastane']],
  [['Cotton', '40% polyester'], ['60 cotton, 40 polyester']],
  [['Polyester 60%', 'Cotton'], ['60 polyester, 40 cotton']],
  [['62.5% wool', 'silk'], ['62.5 wool, 37.5 silk']],
  // Of each share a sign at most was read.
  [['GB: COTTON I', 'X ALGODON 1', 'MACHINE WASH 30°C'], ['100 cotton']],
  // The column of shares was not seen.
  [['FR', 'COTON', 'I', 'COTONE', 'REPASSER A BASSE'], ['100 cotton']],
  [
    ['Shell: 60% cotton', 'polyester', 'Lining: 100% viscose'],
    ['60 cotton, 40 polyester', '100 viscose'],
  ],
])(
  '%j: the share that is missing is what the others leave, and is asked about',
  (lines, shares) => {
    expect(read(...lines)).toMatchObject({ sure: false, shares })
    expect(read(...lines).codes).toContain('share_worked_out')
  },
)

test.each<[string[]]>([
  // Two are missing, in one part or in two.
  [['60% cotton', 'polyester', 'elastane']],
  // Two fibres, one line alone, or a line that tells no share.
  [['GB: COTTON I', 'FR: LAINE 1']],
  [['GB: COTTON I', 'MACHINE WASH']],
  [['COTTON 1', 'ALGODON 1', 'IRON ON COTTON SETTING']],
  [['COTTON', 'MACHINE WASH']],
  [['COTTON', 'WOL', 'LAINE']],
  [['Shell: 60% cotton', 'polyester', 'Lining: 50% viscose', 'cotton']],
  // No name is left, or the name may belong to the share beside it.
  [['60% cotton', '20% polyester']],
  [['60% cotton polyester 5% elastane']],
  // Nothing is missing of the hundred.
  [['100% cotton', 'elastane']],
  [['70% cotton', '40% silk', 'elastane']],
])('%j: nothing is worked out', (lines) => {
  expect(read(...lines).codes).not.toContain('share_worked_out')
})

test('words that a person typed are taken as they stand', () => {
  expect(readLabel('99% polyester\nelastane').blocks).toMatchObject([{ total: 99 }])
})
