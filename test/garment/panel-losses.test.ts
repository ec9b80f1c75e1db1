import { expect, test } from 'vitest'
import { domains, sizes } from '../../src/garment/facts.ts'
import { figureOf, panelFigures } from '../../src/garment/panel-losses.ts'
import { holeFigures } from '../../src/garment/panel-spots.ts'
import { panelsOf } from '../../src/garment/panels.ts'
import { partsOf, spotKinds } from '../../src/garment/spots.ts'

const every = domains.kind.flatMap((kind) =>
  sizes.flatMap((size) =>
    (['sound', 'holes'] as const).flatMap((wear) =>
      panelsOf(
        kind,
        size,
        { wear },
        spotKinds.map((what, n) => ({ what, part: partsOf(kind)[n] ?? null })),
      ).map((panel) => ({ of: `${kind} ${size}`, ...panel })),
    ),
  ),
)

test('a panel is what lies in the garment, less its edges, rounded down', () => {
  const wrong = every.filter(({ from, off, w, h }) => {
    const over = (part: 'w' | 'h', left: number) =>
      from![part] - off!.reduce((sum, edge) => sum + edge[part], 0) - left
    // A half front is rounded twice: with the body it is cut from, and by itself.
    return [over('w', w), over('h', h)].some((inches) => inches < -1e-9 || inches >= 0.5)
  })
  expect(wrong.map(({ of, name }) => `${of} ${name}`)).toEqual([])
  expect(every.length).toBeGreaterThan(1000)
})

test('whatever takes cloth has a name, and its figure is listed', () => {
  const listed = new Set([...panelFigures, ...holeFigures].map(({ figure }) => figure))
  expect(every.flatMap(({ defects }) => defects).filter(({ what }) => !what)).toEqual([])
  const taken = every.flatMap(({ defects, off }) => [...defects, ...off!].map(({ what }) => what!))
  const named = Object.keys(figureOf).sort()
  expect([...new Set(taken)].sort()).toEqual(named)
  expect(Object.values(figureOf).filter((figure) => !listed.has(figure))).toEqual([])
})

// Flat measures of an L: 23 × 31 in (usual trade figures, from memory, unverified); an inch off each
// side, from memory; 1.5 in of shoulder and hem and of button band, common practice, no source.
test('a button shirt L: half of 23 in less 1 in of side seam and 1.5 in of button band is 9 in', () => {
  const [plain, pocketed, back] = panelsOf('button-shirt', 'L')
  expect(plain).toMatchObject({ name: 'half-front', w: 9, h: 29.5, from: { w: 11.5, h: 31 } })
  expect(plain!.off).toEqual([
    { what: 'side-seams', w: 1, h: 0 },
    { what: 'shoulder-and-hem', w: 0, h: 1.5 },
    { what: 'button-band', w: 1.5, h: 0 },
  ])
  expect(pocketed!.defects.map(({ what }) => what)).toEqual(['armhole', 'neck', 'pocket'])
  expect(back!.defects.map(({ what }) => what)).toEqual(['armhole', 'armhole', 'neck', 'yoke'])
})
