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
