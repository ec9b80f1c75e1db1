import { expect, test } from 'vitest'
import { planWords } from '../../src/papers/plan-words.ts'
import { readPile } from '../../src/quilt/plan/instance.ts'
import { moreLike } from '../../src/quilt/plan/more.ts'
import { naivePlan } from '../../src/quilt/plan/naive.ts'
import { language, readPageWords } from '../../src/words/words.ts'

const words = readPageWords()

/** A garment with one panel that gives so many 5 in squares. */
const gives = (id: number, count: number, more: object = {}) => ({
  id,
  L: 50,
  roles: [0, 1],
  panels: [{ W: 20 * Math.max(1, count), H: 20, mult: 1, patterns: [[count]] }],
  ...more,
})

const pileOf = (garments: readonly object[], demand: readonly [number, number] = [6, 6]) =>
  readPile({
    sizes: [{ w: 20, h: 20 }],
    roles: [{ name: 'focal' }, { name: 'background' }],
    demand: demand.map((count, role) => ({ size: 0, role, count })),
    garments,
    cloth: { width: 160, step: 36 },
  })

function told(pile: ReturnType<typeof pileOf>, code = 'en', quilts = 1): string {
  const size = 'crib' as const
  const nameOf = (id: string | number) => `Garment ${id}`
  return planWords(
    { pile, plan: naivePlan(pile), size, quilts, nameOf },
    // The trade's own words come from the owner's files.
    language(
      code,
      new Map([
        ...words.get(code)!,
        ['trade.quilts.crib', 'crib'],
        ['trade.roles.focal', 'main pieces'],
        ['trade.roles.background', 'quiet pieces'],
      ]),
    ),
  )
}

test('a filled quilt is told with its pieces', () => {
  expect(told(pileOf([gives(1, 8), gives(2, 8)]))).toBe(
    'Your 2 garments fill a crib: all 12 pieces.',
  )
})

test('what is open is told in pieces, in garments and in cloth', () => {
  // Two garments give 4 each of 12; one more like these gives 4. Each kind of piece is bought in a cloth of
  // its own: two squares of 5 in lie in one strip, 5 in of cloth, a quarter yard, twice.
  expect(told(pileOf([gives(1, 4), gives(2, 4)]))).toMatch(
    /^Your 2 garments give 8 pieces\. A crib takes 12\. About one more like these would fill it\. Or we fill the rest with 1\/2 yd of new cloth\.$/,
  )
})

test('a kind of piece that is short is named where another is filled', () => {
  const pile = pileOf([gives(1, 6, { roles: [0] }), gives(2, 2, { roles: [1] })])
  expect(told(pile)).toContain('Still missing: quiet pieces (light cloth is best).')
  expect(told(pileOf([gives(1, 4)]))).not.toContain('main pieces')
})

test('a garment that must be used and gives nothing is told by its name', () => {
  const pile = pileOf([gives(1, 6), gives(2, 0, { must: true })])
  expect(told(pile)).toContain('Garment 2 gives no piece for this quilt as it is.')
})

test('how many more garments runs from generous ones to ordinary ones', () => {
  const pile = pileOf([gives(1, 6), gives(2, 2), gives(3, 1)], [20, 20])
  const plan = naivePlan(pile)
  expect(plan.buy.reduce((sum, { count }) => sum + count, 0)).toBe(31)
  expect(moreLike(pile, plan)).toEqual({ low: 6, high: 16 })
  const bare = pileOf([gives(1, 0)])
  expect(moreLike(bare, naivePlan(bare))).toBeNull()
  expect(told(bare)).toBe(
    'Your garments give no piece yet. A crib takes 12. Or we fill the rest with 1/2 yd of new cloth.',
  )
})

test('every sentence stands in Spanish too', () => {
  const pile = pileOf([gives(1, 4), gives(2, 0, { must: true })])
  expect(told(pile, 'es')).toMatch(/^Su prenda da 4 piezas\. Una crib lleva 12\./)
  expect(told(pile, 'es', 2)).toContain('2 colchas llevan 12')
})
