import { expect, test } from 'vitest'
import { fibres } from '../../src/textile/fibres.ts'
import { bearable, secondCeiling, type Worn } from '../help/second-ceiling.ts'
import { compareCeilings } from '../prove/ceiling.ts'

const combinations = Number(process.env.CEILING_COMBINATIONS ?? 20_000)

// The figures and their published sources stand in second-ceiling.ts.
test('every grading has the ceiling of the published figures and keeps what must hold', () => {
  const { disagreements, broken, ...figures } = compareCeilings(combinations)
  process.stdout.write(`heat ceiling: ${JSON.stringify(figures)}\n`)
  expect(disagreements.slice(0, 3)).toEqual([])
  expect(broken.slice(0, 3)).toEqual([])
  expect(figures.combinations).toBe(combinations)
  // All the figures came up, and statements were asked for more often than there were gradings.
  expect(figures.ceilings).toEqual([0, 110, 125, 150, 200])
  expect(figures.claims).toBeGreaterThan(combinations)
})

const cotton: Worn = {
  fibres: [{ fibre: 'cotton', percent: 100 }],
  iron: 'hot',
  surface: 'woven',
  printMake: 'none',
  trims: 'none',
  age: 'modern',
  wear: 'sound',
}

const of = (...shares: [fibre: string, percent: number][]) => ({
  fibres: shares.map(([fibre, percent]) => ({ fibre, percent })),
})

// The second implementation by hand, so that the two cannot be wrong in the same way unseen.
test.each<[what: string, worn: Partial<Worn>, celsius: number]>([
  ['cotton under three dots', {}, 200],
  ['cotton under a silent label', { iron: 'silent' }, 150],
  ['cotton and nylon', of(['cotton', 80], ['polyamide', 20]), 110],
  ['a little elastane under three dots', of(['cotton', 95], ['elastane', 5]), 200],
  ['much elastane under three dots', of(['cotton', 85], ['elastane', 15]), 110],
  ['polypropylene told in part', of(['polypropylene', 60]), 0],
  ['cotton told in part', of(['cotton', 60]), 110],
  ['an unknown pile', { ...of(['unknown', 100]), surface: 'pile' }, 0],
  ['a dye that moves', { printMake: 'sublimated' }, 125],
  ['a screen print, by the rule for any layer', { printMake: 'screen' }, 110],
  ['glued stones', { trims: 'glued' }, 110],
])('%s bears so many degrees', (_, worn, celsius) => {
  expect(secondCeiling({ ...cotton, ...worn })).toBe(celsius)
})

test('the second implementation knows every fibre that a label reading may name', () => {
  expect(Object.keys(bearable).sort()).toEqual(fibres.map(({ key }) => key as string).sort())
})
