import { expect, test } from 'vitest'
import type { Facts } from '../../src/garment/facts.ts'
import { grade } from '../../src/garment/grade.ts'
import { pileFits } from '../../src/quilt/pile-fit.ts'
import { plainShirt } from '../help/garments.ts'
import { knowledge, layouts } from '../help/knowledge.ts'

const garment = (told: Partial<Facts> = {}) =>
  grade({ ...plainShirt, ...told }, { recipient: 'adult' }, knowledge)

const graphic = { pattern: 'single', graphic: 'fits', printMake: 'screen' } as const
const order = (garments: ReturnType<typeof garment>[]) =>
  pileFits(garments, layouts).map(({ layout, fits }) => `${layout} ${fits}`)

test('plain shirts suit every layout, in the order of the shop', () => {
  expect(order([garment(), garment()])).toEqual([
    'quartered-nine-patch 2',
    'plain-squares 2',
    'framed-panels 2',
    'mixed-columns 2',
  ])
})

test('a pile with single graphics leads to frames and mixed columns', () => {
  const found = pileFits([garment(), garment(graphic), garment(graphic)], layouts)
  expect(found.map(({ layout }) => layout).slice(0, 2)).toEqual(['framed-panels', 'mixed-columns'])
  expect(found.at(-1)!.misfits).toEqual([{ why: 'graphic-would-be-cut', count: 2 }])
})

test('cord, prints with an up and a down, and heavy cloth are not for turned patchwork', () => {
  const pile = [
    garment({ surface: 'pile' }),
    garment({ oneWay: 'yes' }),
    garment({ weight: 'heavy' }),
    garment({ weight: 'heavy' }),
  ]
  const [last] = pileFits(pile, layouts).slice(-1)
  expect(last).toEqual({
    layout: 'quartered-nine-patch',
    fits: 0,
    of: 4,
    misfits: [
      { why: 'too-bulky', count: 2 },
      { why: 'nap-would-turn', count: 1 },
      { why: 'print-would-turn', count: 1 },
    ],
  })
})

test('an empty pile suits nothing yet', () => {
  expect(pileFits([], layouts).every(({ fits, of }) => fits === 0 && of === 0)).toBe(true)
})
