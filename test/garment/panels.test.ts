import { describe, expect, test } from 'vitest'
import { domains, sizes } from '../../src/garment/facts.ts'
import { flatOf, sizesOf } from '../../src/garment/garment-sizes.ts'
import { panelsOf } from '../../src/garment/panels.ts'

const everyGarment = domains.kind.flatMap((kind) =>
  sizes.map((size) => ({ kind, size, panels: panelsOf(kind, size) })),
)

test('every kind but an unnamed one gives panels in each size it comes in', () => {
  const bare = domains.kind.filter(
    (kind) => kind !== 'other' && sizesOf(kind).some((size) => panelsOf(kind, size).length === 0),
  )
  expect(bare).toEqual([])
  expect(panelsOf('other', 'M')).toEqual([])
  expect(sizesOf('other')).toEqual([])
})

test('every measure names a source, and what is no published figure says so', () => {
  const sources = domains.kind.flatMap((kind) =>
    sizesOf(kind).map((size) => flatOf(kind, size)!.source),
  )
  const plain = /from memory, unverified|common practice, no source|secondary/
  expect(sources.filter((source) => !plain.test(source))).toEqual([])
})

test('panels lie on the quarter inch, and defects inside them', () => {
  const onGrid = (...lengths: number[]) => lengths.every((length) => Number.isInteger(length * 4))
  const off = everyGarment.flatMap(({ kind, size, panels }) =>
    panels
      .filter(
        ({ w, h, defects }) =>
          !onGrid(w, h, ...defects.flatMap((d) => [d.x, d.y, d.w, d.h])) ||
          defects.some((d) => d.x < 0 || d.y < 0 || d.w <= 0 || d.h <= 0 || d.x >= w || d.y >= h),
      )
      .map(({ name }) => `${kind} ${size} ${name}`),
  )
  expect(off).toEqual([])
})

test('panels are never larger than the garment laid flat', () => {
  const larger = everyGarment.filter(({ kind, size, panels }) => {
    const flat = size === 'unknown' ? null : flatOf(kind, size)
    return (
      flat &&
      panels.some(({ w, h, name }) =>
        name === 'sleeve'
          ? w > flat.widthIn || h > flat.lengthIn
          : w >= flat.widthIn + 0.01 || h > flat.lengthIn,
      )
    )
  })
  expect(larger.map(({ kind, size }) => `${kind} ${size}`)).toEqual([])
})

describe('the body of a T-shirt', () => {
  const [front, back] = panelsOf('tshirt', 'M')

  test('loses an inch at each side, and shoulder and hem', () => {
    expect(front).toMatchObject({ name: 'front', w: 18, h: 27.5 })
  })

  test('has armholes in both upper corners and a neckline between, deeper in front', () => {
    const [left, right, neck] = front!.defects
    expect(left).toMatchObject({ x: 0, y: 0 })
    expect(right!.x + right!.w).toBe(front!.w)
    expect(neck!.h).toBeGreaterThan(back!.defects[2]!.h)
  })
})

test('a shirt has two fronts beside its placket, one of them with a pocket', () => {
  const fronts = panelsOf('button-shirt', 'M').filter(({ name }) => name === 'half-front')
  expect(fronts.map(({ defects }) => defects.length)).toEqual([2, 3])
})

test('an unknown size is taken for a small one, a measured one as it is', () => {
  expect(panelsOf('tshirt', 'unknown')).toEqual(panelsOf('tshirt', 'S'))
  const measured = panelsOf('tshirt', { widthIn: 20, lengthIn: 29 })
  expect(measured).toEqual(panelsOf('tshirt', 'M'))
})

test.each(['holes', 'unknown'] as const)('wear %s lays a hole through one panel only', (wear) => {
  const whole = panelsOf('jeans', 'M')
  const worn = panelsOf('jeans', 'M', { wear })
  const defects = (panels: typeof whole) =>
    panels.reduce((sum, panel) => sum + panel.count * panel.defects.length, 0)
  const count = (panels: typeof whole) => panels.reduce((sum, panel) => sum + panel.count, 0)
  expect(defects(worn)).toBe(defects(whole) + 1)
  expect(count(worn)).toBe(count(whole))
})

const bodies = ['front', 'back', 'half-front']
const upper: readonly (typeof domains.kind)[number][] = [
  'tshirt',
  'long-sleeve',
  'polo',
  'jersey',
  'sweatshirt',
  'hoodie',
  'jumper',
  'thermal',
  'button-shirt',
  'blouse',
  'dress',
  'pyjamas',
  'baby-suit',
  'uniform',
  'swimwear',
  'coat',
]

test.each(upper)(
  'the body of a %s loses armholes and neckline as corners, not as width',
  (kind) => {
    const flat = flatOf(kind, kind === 'baby-suit' ? '6-12m' : 'M')!
    const panels = panelsOf(kind, kind === 'baby-suit' ? '6-12m' : 'M')
    for (const { name, w, h, defects } of panels.filter(({ name }) => bodies.includes(name))) {
      expect(name === 'half-front' ? 2 * w : w).toBeGreaterThanOrEqual(flat.widthIn - 5.5)
      expect(h).toBeGreaterThanOrEqual(flat.lengthIn - 1.5)
      const atTop = defects.filter(({ y, w: wide }) => y === 0 && wide < w)
      expect(atTop.some(({ x }) => x === 0)).toBe(true)
      if (name === 'half-front') expect(atTop.some((d) => d.x + d.w === w)).toBe(true)
      else expect(atTop.some((d) => d.x > 0 && d.x + d.w < w && 2 * d.x + d.w >= w - 1)).toBe(true)
    }
  },
)

// Common practice, no source: what a kind is known for lies as a defect in its panel.
test.each([
  ['polo', 'front', { w: 3.25, y: 0 }],
  ['thermal', 'front', { w: 3.25, y: 0 }],
  ['hoodie', 'front', { w: 13.25 }],
  ['button-shirt', 'back', { x: 0, y: 0, w: 19.5, h: 4.5 }],
  ['button-shirt', 'half-front', { w: 5, h: 6 }],
  ['dress', 'front', { x: 0, w: 17, h: 1 }],
  ['dress', 'back', { y: 0, w: 3.25 }],
  ['skirt', 'cloth', { y: 0, w: 3.25 }],
  ['coat', 'half-front', { w: 5, h: 6 }],
  ['coat', 'back', { w: 3.25 }],
  ['apron', 'cloth', { x: 0, y: 0 }],
  ['jeans', 'leg', { x: 0, y: 15 }],
  ['tie', 'tie-end', { x: 0, y: 0 }],
] as const)('a %s has in its %s the defect %o', (kind, name, defect) => {
  const panels = panelsOf(kind, 'M').filter((panel) => panel.name === name)
  expect(panels.flatMap(({ defects }) => defects)).toContainEqual(expect.objectContaining(defect))
})

test('both fronts of a uniform carry a pocket, and a tie is narrower towards the neck', () => {
  const fronts = panelsOf('uniform', 'M').filter(({ name }) => name === 'half-front')
  expect(fronts.map(({ count, defects }) => [count, defects.length])).toEqual([[2, 3]])
  expect(panelsOf('tie', 'M')[0]!.defects).toHaveLength(4)
})

test('a hole falls into cloth, not into what is lost anyway', () => {
  const [worn] = panelsOf('apron', 'M', { wear: 'holes' })
  const hole = worn!.defects.at(-1)!
  const others = worn!.defects.slice(0, -1)
  const apart = (a: typeof hole, b: typeof hole) =>
    a.x >= b.x + b.w || b.x >= a.x + a.w || a.y >= b.y + b.h || b.y >= a.y + a.h
  expect(others.every((lost) => apart(hole, lost))).toBe(true)
})
