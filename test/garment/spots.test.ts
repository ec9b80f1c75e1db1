import { expect, test } from 'vitest'
import { domains } from '../../src/garment/facts.ts'
import { sizesOf } from '../../src/garment/garment-sizes.ts'
import { panelsOf } from '../../src/garment/panels.ts'
import { partAt, partsOf, type Spot, spotKinds } from '../../src/garment/spots.ts'
import { piecesOf, yardstick } from '../../src/quilt/yield.ts'

const lossesOf = (panels: ReturnType<typeof panelsOf>, what: string) =>
  panels.flatMap(({ name, count, defects }) =>
    defects.filter((lost) => lost.what === what).map(() => `${count} ${name}`),
  )

test('every copy of every panel is a part with a name, and every part is a copy', () => {
  for (const kind of domains.kind) {
    const copies = new Map<string, number>()
    const found = panelsOf(kind, sizesOf(kind).includes('M') ? 'M' : 'unknown').flatMap((panel) => {
      const before = copies.get(panel.name) ?? 0
      copies.set(panel.name, before + panel.count)
      return Array.from({ length: panel.count }, (_, n) => partAt(kind, panel.name, before + n))
    })
    expect(found.toSorted(), kind).toEqual(partsOf(kind).toSorted())
  }
})

test('a marked spot costs cloth in its own part and nowhere else', () => {
  const panels = panelsOf('tshirt', 'L', { wear: 'holes' }, [{ what: 'hole', part: 'left-sleeve' }])
  expect(lossesOf(panels, 'hole')).toEqual(['1 sleeve'])
  expect(panels.map(({ name, count }) => [name, count])).toEqual([
    ['front', 1],
    ['back', 1],
    ['sleeve', 1],
    ['sleeve', 1],
  ])
})

test('two spots of one part lie in one copy, and cost more than one', () => {
  const one: Spot = { what: 'hole', part: 'right-leg-back' }
  const count = (spots: readonly Spot[]) =>
    piecesOf(panelsOf('jeans', 'L', { wear: 'holes' }, spots), yardstick)
  const two = panelsOf('jeans', 'L', { wear: 'holes' }, [one, { ...one, what: 'stain' }])
  expect([...lossesOf(two, 'hole'), ...lossesOf(two, 'stain')]).toEqual(['1 leg', '1 leg'])
  expect(two.map((panel) => panel.count)).toEqual([1, 3])
  expect(count([one, one])).toBeLessThan(count([one]))
})

// The wearer's left is where a breast pocket sits: common practice, no source.
test('the left front of a shirt is the one with the pocket', () => {
  const [plain, pocketed] = panelsOf('button-shirt', 'L', { wear: 'sound' }, [
    { what: 'stain', part: 'left-front' },
  ])
  expect(plain!.defects.map(({ what }) => what)).toEqual(['armhole', 'neck'])
  expect(pocketed!.defects.map(({ what }) => what)).toEqual(['armhole', 'neck', 'pocket', 'stain'])
})

test.each([
  ['holes', ['1 back']],
  ['unknown', ['1 back', '1 back']],
  ['shattered', ['1 back', '1 back']],
  ['sound', ['1 back']],
] as const)(
  'with wear %s a hole of no part lies in the largest panel, beside one that nobody saw',
  (wear, losses) => {
    const panels = panelsOf('tshirt', 'L', { wear }, [{ what: 'hole', part: null }])
    expect(lossesOf(panels, 'hole')).toEqual(losses)
  },
)

test('holes that are told of and not marked stay laid into the largest panel', () => {
  const stained: Spot[] = [{ what: 'stain', part: 'front' }]
  const panels = panelsOf('tshirt', 'L', { wear: 'holes' }, stained)
  expect(lossesOf(panels, 'hole')).toEqual(['1 back'])
  expect(lossesOf(panels, 'stain')).toEqual(['1 front'])
})

test('whatever is marked, no cloth is gained, and no loss lies outside of its panel', () => {
  for (const kind of domains.kind) {
    for (const size of sizesOf(kind)) {
      const whole = panelsOf(kind, size, { wear: 'holes' })
      const spots = [...partsOf(kind), null].flatMap((part) =>
        spotKinds.flatMap((what): Spot[] => Array.from({ length: 3 }, () => ({ what, part }))),
      )
      const worn = panelsOf(kind, size, { wear: 'holes' }, spots)
      expect(piecesOf(worn, yardstick), kind).toBeLessThanOrEqual(piecesOf(whole, yardstick))
      const outside = worn.flatMap(({ w, h, defects }) =>
        defects.filter(
          (lost) =>
            spotKinds.some((what) => what === lost.what) &&
            (lost.x < 0 || lost.y < 0 || lost.x + lost.w > w || lost.y + lost.h > h),
        ),
      )
      expect(outside, `${kind} ${size}`).toEqual([])
    }
  }
})
