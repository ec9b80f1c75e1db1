import fc from 'fast-check'
import { expect, test } from 'vitest'
import { domains, type Facts } from '../../src/garment/facts.ts'
import {
  careFigures,
  finishedCare,
  type PieceCare,
  washC,
  washes,
  washOf,
} from '../../src/garment/finished-care.ts'

const shirt: Facts = {
  kind: 'button-shirt',
  heat: 'hot',
  iron: 'hot',
  labelDoubt: 'no',
  surface: 'woven',
  stretch: 'none',
  weight: 'medium',
  wear: 'sound',
  age: 'modern',
  pattern: 'solid',
  oneWay: 'no',
  printMake: 'none',
  graphic: 'none',
  trims: 'none',
  soil: 'clean',
  wash: 'washed',
  bleed: 'fast',
  consent: 'yes',
  test: 'none',
  yield: 'enough',
}

const piece = (
  n: number,
  facts: Partial<Facts> = {},
  more: Partial<PieceCare> = {},
): PieceCare => ({
  n,
  facts: { ...shirt, ...facts },
  ceilingC: 200,
  signs: [],
  ...more,
})

// Signs of ISO 3758: a crossed tub is never to be washed, a hand in the tub by hand alone.
test.each([
  ['a firm cotton shirt', {}, [], 'gentle'],
  ['a crossed tub on the label', {}, ['wash-none'], 'none'],
  ['a hand in the tub on the label', {}, ['wash-hand'], 'hand'],
  ['silk that was never washed', { wash: 'never' }, [], 'none'],
  ['leather', { surface: 'leather' }, [], 'none'],
  ['a tie, often acetate without a label', { kind: 'tie' }, [], 'none'],
  ['dye that runs', { bleed: 'bleeds' }, [], 'none'],
  ['dye that nobody tried', { bleed: 'untested' }, [], 'hand'],
  ['a print of film', { printMake: 'film' }, [], 'hand'],
  ['thin cloth', { wear: 'thin' }, [], 'hand'],
  ['fibres that nobody knows', { heat: 'unknown' }, [], 'hand'],
] as const)('%s is washed so', (_, facts, signs, wash) => {
  expect(washOf({ facts: { ...shirt, ...facts }, signs })).toBe(wash)
})

test('the least washable piece decides, and the coldest for the iron', () => {
  const care = finishedCare([
    piece(1),
    piece(2, { wear: 'thin' }, { ceilingC: 110 }),
    piece(3, { wash: 'never' }, { ceilingC: 150 }),
    piece(4, { bleed: 'bleeds' }),
  ])
  expect(care).toEqual({
    wash: 'none',
    drying: 'flat',
    ceilingC: 110,
    washBy: [3, 4],
    ironBy: [2],
  })
})

test('one piece that no iron may touch keeps it off the whole quilt', () => {
  const care = finishedCare([piece(1), piece(2, {}, { ceilingC: null })])
  expect(care.ceilingC).toBeNull()
  expect(care.ironBy).toEqual([2])
})

test('where every piece may be washed by machine nobody is named', () => {
  expect(finishedCare([piece(1), piece(2)])).toMatchObject({
    wash: 'gentle',
    drying: 'line',
    washBy: [],
  })
})

const facts: fc.Arbitrary<Facts> = fc.record(
  Object.fromEntries(
    Object.entries(domains).map(([name, values]) => [name, fc.constantFrom(...values)]),
  ),
) as never

const pieces = fc.array(
  fc.record({
    n: fc.integer({ min: 1, max: 99 }),
    facts,
    ceilingC: fc.constantFrom(null, 110, 125, 150, 200),
    signs: fc.subarray(['wash-none', 'wash-hand', 'dry-flat', 'wash-40']),
  }),
  { maxLength: 6 },
)

test('a piece more never makes the care harsher', () => {
  fc.assert(
    fc.property(pieces, pieces, (some, more) => {
      const [few, all] = [finishedCare(some), finishedCare([...some, ...more])]
      expect(washes.indexOf(all.wash)).toBeGreaterThanOrEqual(washes.indexOf(few.wash))
      if (some.length > 0) expect(all.ceilingC ?? 0).toBeLessThanOrEqual(few.ceilingC ?? 0)
      for (const { ceilingC } of some) expect(all.ceilingC ?? 0).toBeLessThanOrEqual(ceilingC ?? 0)
    }),
  )
})

test('a garment whose facts nobody told is washed by hand at most', () => {
  fc.assert(
    fc.property(
      facts,
      fc.constantFrom('wear', 'age', 'weight', 'surface', 'printMake', 'trims', 'heat'),
      (some, name) => {
        expect(washOf({ facts: { ...some, [name]: 'unknown' } as Facts, signs: [] })).not.toBe(
          'gentle',
        )
      },
    ),
  )
})

// ISO 3758:2012 as in national guides (secondary): 30 is the coldest tub, a hand in the tub is 40 °C at most.
test('the water of each way is that of the standard', () => {
  expect(washC).toEqual({ gentle: 30, hand: 40, none: null })
  expect(careFigures.map(({ value }) => value)).toEqual([30, 40])
})
