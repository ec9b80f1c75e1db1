import { expect, test } from 'vitest'
import { Failure } from '../../../src/base/failures.ts'
import { readPile } from '../../../src/quilt/plan/instance.ts'
import { shareOf } from '../../../src/quilt/plan/limits.ts'
import { smallPile } from '../../help/piles.ts'

const good = smallPile(3)

test('roles are read by name and by place', () => {
  const byPlace = {
    ...good,
    demand: good.demand.map((one) => ({
      ...one,
      role: good.roles.findIndex(({ name }) => name === one.role),
    })),
    garments: good.garments.map((one) => ({
      ...one,
      roles: one.roles.map((role) => good.roles.findIndex(({ name }) => name === role)),
    })),
  }
  expect(readPile(byPlace)).toEqual({ ...readPile(good), rolesBy: 'place' })
})

test('keys nobody knows are ignored', () => {
  expect(
    readPile({ ...good, colour: 'blue', sizes: good.sizes.map((s) => ({ ...s, x: 1 })) }),
  ).toEqual(readPile(good))
})

test('pieces wanted twice are added up, and a garment without an id is called by its place', () => {
  const pile = readPile({
    ...good,
    demand: [
      { size: 0, role: 'focal', count: 2 },
      { size: 0, role: 'focal', count: 3 },
    ],
    garments: good.garments.map(({ id, ...garment }) => garment),
  })
  expect(pile.demand[0]![0]).toBe(5)
  expect(pile.garments.map(({ id }) => id)).toEqual([...good.garments.keys()])
})

test('a share that is a decimal fraction is counted as it is written', () => {
  const pile = readPile({
    sizes: [{ w: 20, h: 20, rot: true }],
    roles: [{ name: 'focal', garments: true }],
    demand: [{ size: 0, role: 'focal', count: 180 }],
    garments: [],
    shareMax: 0.35,
    cloth: { width: 160, step: 36 },
  })
  expect(shareOf(pile, 0)).toBe(63)
})

const garment = good.garments[0]!
const panel = garment.panels[0]!
const broken: [what: string, field: string, pile: unknown][] = [
  ['nothing', 'file', null],
  ['a list', 'file', []],
  ['a number', 'file', 7],
  ['no sizes', 'sizes', { ...good, sizes: undefined }],
  ['a size of no width', 'sizes.0.w', { ...good, sizes: [{ w: 0, h: 20, rot: true }] }],
  ['a size of half a quarter', 'sizes.0.h', { ...good, sizes: [{ w: 20, h: 20.5, rot: true }] }],
  ['no cloth', 'cloth', { ...good, cloth: null }],
  ['cloth of no width', 'cloth.width', { ...good, cloth: { width: 0, step: 36 } }],
  ['steps of no length', 'cloth.step', { ...good, cloth: { width: 160, step: 0 } }],
  [
    'a demand below zero',
    'demand.0.count',
    { ...good, demand: [{ size: 0, role: 'focal', count: -1 }] },
  ],
  [
    'a size that is not there',
    'demand.0.size',
    { ...good, demand: [{ size: 9, role: 'focal', count: 1 }] },
  ],
  [
    'a role that is not there',
    'demand.0.role',
    { ...good, demand: [{ size: 0, role: 'x', count: 1 }] },
  ],
  ['a place of no role', 'demand.0.role', { ...good, demand: [{ size: 0, role: 9, count: 1 }] }],
  [
    'a name of a prototype',
    'demand.0.role',
    { ...good, demand: [{ size: 0, role: 'constructor', count: 1 }] },
  ],
  ['two roles of one name', 'roles', { ...good, roles: [...good.roles, good.roles[0]] }],
  ['two garments of one id', 'garments', { ...good, garments: [garment, garment] }],
  [
    'a garment of no lightness',
    'garments.0.L',
    { ...good, garments: [{ ...garment, L: 'light' }] },
  ],
  [
    'a garment with a role nobody knows',
    'garments.0.roles',
    { ...good, garments: [{ ...garment, roles: ['x'] }] },
  ],
  [
    'a pattern of too many counts',
    'garments.0.panels.0.patterns',
    { ...good, garments: [{ ...garment, panels: [{ ...panel, patterns: [[1, 2, 3, 4]] }] }] },
  ],
  [
    'a panel longer than a bolt',
    'garments.0.panels.0',
    { ...good, garments: [{ ...garment, panels: [{ W: 9000, H: 20, defects: [], mult: 1 }] }] },
  ],
  [
    'a contrast of unknown roles',
    'contrast.0.dark',
    { ...good, contrast: [{ light: 'focal', dark: 'y', delta: 1 }] },
  ],
  ['a share below zero', 'shareMax', { ...good, shareMax: -0.5 }],
  [
    'more garments than a pile holds',
    'garments',
    { ...good, garments: Array.from({ length: 1001 }, (_, n) => ({ ...garment, id: n })) },
  ],
]

test.each(broken)('%s is refused, and the refusal names %s', (_, field, pile) => {
  try {
    readPile(pile)
    expect.unreachable()
  } catch (error) {
    expect(error).toBeInstanceOf(Failure)
    expect(error).toMatchObject({ code: 'bad_input', details: { field } })
  }
})
