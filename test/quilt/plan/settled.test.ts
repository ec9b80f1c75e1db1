import { expect, test } from 'vitest'
import { panelsOf } from '../../../src/garment/panels.ts'
import { quiltSizes } from '../../../src/quilt/layout.ts'
import { checkPlan } from '../../../src/quilt/plan/check.ts'
import { pileFor } from '../../../src/quilt/plan/from-quilt.ts'
import { readPile } from '../../../src/quilt/plan/instance.ts'
import { naivePlan } from '../../../src/quilt/plan/naive.ts'
import { inAHurry } from '../../../src/quilt/plan/panels.ts'
import { settledOf } from '../../../src/quilt/plan/settled.ts'
import { layouts } from '../../help/knowledge.ts'

// Six light and four dark squares of 5 in; garment 7 has five of them, of garment 9 nothing is used. Two
// light ones are missing at least, or one and the four dark ones: of each what is bought is a strip.
const small = readPile({
  sizes: [{ w: 20, h: 20 }],
  roles: [{ name: 'background' }, { name: 'focal' }],
  demand: [
    { size: 0, role: 'background', count: 6 },
    { size: 0, role: 'focal', count: 4 },
  ],
  garments: [
    { id: 7, L: 80, roles: ['background'], panels: [{ W: 100, H: 20, patterns: [[5]] }] },
    { id: 9, L: 30, roles: ['focal'], panels: [] },
  ],
  cloth: { width: 160, step: 36 },
})

test('pieces of garments by their numbers, and cloth by role, in inches and yards', () => {
  const plan = naivePlan(small)
  expect(checkPlan(small, plan).problems).toEqual([])
  expect(settledOf(small, plan, true)).toEqual({
    pieces: [{ garment: 7, role: 'background', size: { w: 5, h: 5 }, count: 5, quilt: 0 }],
    cloth: [
      { role: 'background', quilt: 0, yards: 0.25, pieces: 1, lengthIn: 5 },
      { role: 'focal', quilt: 0, yards: 0.25, pieces: 4, lengthIn: 5 },
    ],
    proven: true,
  })
})

test('a garment that goes by a name is our own fault', () => {
  const named = readPile({
    sizes: [{ w: 20, h: 20 }],
    roles: [{ name: 'focal' }],
    demand: [{ size: 0, role: 'focal', count: 1 }],
    garments: [{ id: 'flannel', L: 0, roles: [0], panels: [{ W: 20, H: 20, patterns: [[1]] }] }],
    cloth: { width: 160, step: 36 },
  })
  expect(() => settledOf(named, naivePlan(named), false)).toThrow(/flannel/)
})

test.each(layouts.map(({ id }) => id))('what is settled of %s is the whole quilt', (id) => {
  const layout = layouts.find((one) => one.id === id)!
  const garments = [3, 5, 8].map((n) => ({
    id: n,
    facts: { pattern: 'solid', surface: 'woven', oneWay: 'no', stretch: 'none' } as const,
    graphicIn: null,
    must: false,
    panels: panelsOf('button-shirt', 'L'),
  }))
  for (const size of quiltSizes) {
    const wanted = { layout, size, alike: 2, garments, clothWidthIn: 40 }
    const { pile } = inAHurry(pileFor(wanted))
    const { pieces, cloth } = settledOf(pile, naivePlan(pile), false)
    for (const quilt of [0, 1]) {
      for (const [r, role] of pile.roles.entries()) {
        if (role.quilt !== quilt) continue
        const called = role.called ?? role.name
        const isHere = (one: { role: string; quilt: number }) =>
          one.role === called && one.quilt === quilt
        const given = pieces.filter(isHere).reduce((sum, { count }) => sum + count, 0)
        const bought = cloth.filter(isHere).reduce((sum, one) => sum + one.pieces, 0)
        expect(given + bought).toBe(pile.demand.reduce((sum, row) => sum + row[r]!, 0))
      }
    }
    for (const { yards, lengthIn } of cloth) {
      expect(yards * 36).toBeGreaterThanOrEqual(lengthIn)
      expect(yards * 36).toBeLessThan(lengthIn + 9)
    }
  }
})
