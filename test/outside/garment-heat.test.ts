import { expect, test } from 'vitest'
import { type Facts, untold } from '../../src/garment/facts.ts'
import { ceilingOf } from '../../src/garment/press.ts'
import { limitOf } from '../../src/textile/iron.ts'
import { plainShirt } from '../help/garments.ts'
import { knowledge, rates } from '../help/knowledge.ts'

const ceiling = (told: Partial<Facts>) =>
  ceilingOf({ ...plainShirt, heat: 'hot', iron: 'hot', ...told }, knowledge).ceilingC ?? 0

// ISO 3758:2012 as in national guides (secondary): one, two, three dots are 110, 150, 200 °C.
test.each([
  ['cool', 110],
  ['warm', 150],
  ['hot', 200],
  ['none', 0],
] as const)('a label that says %s caps the iron at %i °C', (iron, limit) => {
  expect(ceiling({ iron })).toBe(limit)
  expect(limitOf(iron)).toBe(limit)
})

test.each(['silent', 'missing'] as const)('label and fibre rules agree on a %s label', (iron) => {
  expect(ceiling({ iron })).toBe(limitOf(iron))
})

// Temperature-label maker's guide (secondary): disperse dye starts to move about 129 °C.
test('a sublimated print stays below the heat at which its dye moves', () => {
  expect(ceiling({ printMake: 'sublimated' })).toBeLessThan(129)
})

// From memory, unverified: stones set with glue loosen from 120 °C.
test('glued trims stay below the heat at which their glue lets go', () => {
  expect(ceiling({ trims: 'glued' })).toBeLessThan(120)
})

// Garment-trade page (secondary): fusing presses run no hotter than 175 °C. General handbook range,
// from memory: glue line 95 °C at the least.
test('what an interfacing needs lies within what the trade fuses at', () => {
  for (const { glue_line_c, sole_c } of Object.values(rates.interfacing)) {
    expect(glue_line_c).toBeGreaterThanOrEqual(95)
    expect(sole_c).toBeLessThanOrEqual(175)
  }
})

test('cloth at 110 °C, of one dot or of unknown fibre, can take no interfacing of the shop', () => {
  const least = Math.min(...knowledge.interfacings.map(({ soleC }) => soleC))
  expect(least + 10).toBeGreaterThan(110)
  expect(ceilingOf(untold, knowledge).ceilingC).toBeNull()
})

// Whole garments in grams: usual ranges of the trade, from memory, unverified.
test.each<[Facts['kind'], number, number]>([
  ['tshirt', 130, 220],
  ['baby-suit', 50, 90],
  ['button-shirt', 180, 350],
  ['sweatshirt', 400, 600],
  ['hoodie', 500, 800],
  ['jeans', 550, 800],
  ['jumper', 300, 600],
  ['tie', 50, 70],
])('a %s weighs between %i and %i g', (kind, least, most) => {
  expect(rates.weights_g[kind]).toBeGreaterThanOrEqual(least)
  expect(rates.weights_g[kind]).toBeLessThanOrEqual(most)
})
