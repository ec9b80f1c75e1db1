import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { panelsOf } from '../../src/garment/panels.ts'
import { cutDrawing } from '../../src/papers/cut-drawing.ts'
import { benchOrder } from '../../src/papers/cut-order.ts'
import { cutSheet, type PanelOnSheet } from '../../src/papers/cut-sheet.ts'
import { toSvg } from '../../src/papers/drawing.ts'
import type { PanelToCut } from '../../src/quilt/cut/panel.ts'
import { type Pattern, patterns } from '../../src/quilt/cut/patterns.ts'
import { shopKnowledge } from '../help/bench-garments.ts'
import { textsOf, wrongIn } from '../help/cut-drawn.ts'
import { holedPanels, kinds, pictureFront, squares, toCut } from '../help/cut-panels.ts'
import { followed } from '../help/cut-words.ts'
import { replayed } from '../help/replay-cuts.ts'

const language = (code: string) => shopKnowledge().languages.get(code)!
const sheetOf = (panels: readonly PanelOnSheet[], code = 'en') =>
  cutSheet({ panels, language: language(code) })

const firstOf = (name: string, panel: PanelToCut, times = 1): PanelOnSheet => ({
  name,
  panel,
  pattern: patterns(panel)[0]!,
  times,
})

const plainCloth = (W: number, H: number, w = 20, h = w): PanelToCut => ({
  W,
  H,
  pieces: [{ w, h, rot: false }],
  defects: [],
})

/** Everything that can be wrong with the order, the drawing and the words of one pattern. */
function wrongWith(panel: PanelToCut, pattern: Pattern): string[] {
  const order = benchOrder(panel, pattern)
  const cuts = order.cuts.map(({ way, at, rect }) => ({ cut: way, at, rect }))
  const { drawing } = cutDrawing(
    { panel, pattern, order },
    {
      measure: (w, h) => `${w} × ${h} in`,
      block: 'block',
      unmarked: 'see the list',
    },
  )
  const [cut] = sheetOf([{ name: 'Front', panel, pattern, times: 1 }]).panels
  const pieces = pattern.items.map(({ x, y, w, h }) => [x, y, w, h].join()).sort()
  const read = cuts.length > 0 ? followed(panel.W, panel.H, cut!.list) : pieces
  const cloth = [
    ...order.leftovers.map(([x1, y1, x2, y2]) => (x2 - x1) * (y2 - y1)),
    ...pattern.items.map(({ w, h }) => w * h),
  ].reduce((sum, area) => sum + area, 0)
  return [
    ...replayed(panel, { ...pattern, cuts }),
    ...wrongIn(drawing, panel, pattern, cuts.length),
    ...(cuts.length > pattern.cuts.length ? ['there are more cuts than before'] : []),
    ...(cut!.list.length === cuts.length ? [] : ['there is not one line for each cut']),
    ...(cut!.list.every(({ number }, n) => number === n + 1) ? [] : ['lines out of order']),
    ...(read.join(' ') === pieces.join(' ') ? [] : ['the words lead to other pieces']),
    ...(cloth === panel.W * panel.H ? [] : [`${cloth} of ${panel.W * panel.H} is told of`]),
  ]
}

const everyPanel = kinds.flatMap((kind) => holedPanels(kind, ({ name }) => `${kind}, ${name}`))

test('every kind but the one that only measuring tells has panels to draw', () => {
  expect(new Set(everyPanel.map(({ name }) => name.split(',')[0])).size).toBe(kinds.length - 1)
})

test.each([...everyPanel, pictureFront('tshirt, picture')])(
  '$name: order, drawing and words give the pattern’s pieces',
  ({ panel, pattern }) => {
    expect(wrongWith(panel, pattern)).toEqual([])
  },
)

test('every way to cut a front around its picture is drawn and told', () => {
  const { panel } = pictureFront('Front')
  const all = patterns(panel)
  expect(all.length).toBeGreaterThan(3)
  for (const pattern of all) expect(wrongWith(panel, pattern)).toEqual([])
})

const length = fc.integer({ min: 1, max: 90 })
const box = fc.record({
  x: fc.integer({ min: -10, max: 90 }),
  y: fc.integer({ min: -10, max: 90 }),
  w: fc.integer({ min: 1, max: 30 }),
  h: fc.integer({ min: 1, max: 30 }),
})
const side = fc.integer({ min: 10, max: 40 })

test('no panel is drawn or told wrongly', () => {
  fc.assert(
    fc.property(
      length,
      length,
      fc.array(fc.record({ w: side, h: side, rot: fc.boolean() }), { minLength: 1, maxLength: 2 }),
      fc.array(box, { maxLength: 3 }),
      fc.nat(),
      (W, H, pieces, defects, which) => {
        const panel = { W, H, pieces, defects }
        const all = patterns(panel)
        expect(wrongWith(panel, all[which % all.length]!)).toEqual([])
      },
    ),
    { seed: 41, numRuns: 300 },
  )
})

describe('the order of the bench', () => {
  const half = { w: 20, h: 20, rot: false }

  test('makes trims one after another into one', () => {
    const panel: PanelToCut = { W: 20, H: 40, pieces: [half], defects: [] }
    const pattern: Pattern = {
      counts: [1],
      items: [{ k: 0, x: 0, y: 12, w: 20, h: 20 }],
      cuts: [
        { cut: 'H', at: 4, rect: [0, 0, 20, 40] },
        { cut: 'H', at: 9, rect: [0, 4, 20, 40] },
        { cut: 'H', at: 32, rect: [0, 9, 20, 40] },
        { cut: 'H', at: 12, rect: [0, 9, 20, 32] },
      ],
    }
    expect(benchOrder(panel, pattern).cuts.map(({ way, at }) => [way, at])).toEqual([
      ['H', 12],
      ['H', 32],
    ])
  })

  test('trims at one line before the parts that want it are parted', () => {
    const panel: PanelToCut = { W: 40, H: 26, pieces: [half], defects: [] }
    const pattern: Pattern = {
      counts: [2],
      items: [
        { k: 0, x: 0, y: 0, w: 20, h: 20 },
        { k: 0, x: 20, y: 0, w: 20, h: 20 },
      ],
      cuts: [
        { cut: 'V', at: 20, rect: [0, 0, 40, 26] },
        { cut: 'H', at: 20, rect: [0, 0, 20, 26] },
        { cut: 'H', at: 20, rect: [20, 0, 40, 26] },
      ],
    }
    expect(benchOrder(panel, pattern).cuts.map(({ way, at }) => [way, at])).toEqual([
      ['H', 20],
      ['V', 20],
    ])
  })

  test('spares cuts over all kinds of garments', () => {
    const before = everyPanel.reduce((sum, { pattern }) => sum + pattern.cuts.length, 0)
    const after = everyPanel.reduce(
      (sum, { panel, pattern }) => sum + benchOrder(panel, pattern).cuts.length,
      0,
    )
    // An eighth at least: the lists themselves already spare what they can.
    expect(after).toBeLessThan(before * 0.875)
  })

  test.each([
    [
      'a cut of cloth that is not there',
      { items: [], cuts: [{ cut: 'H' as const, at: 5, rect: [0, 0, 99, 20] as const }] },
    ],
    ['a piece that no cut leaves', { items: [{ k: 0, x: 1, y: 1, w: 5, h: 5 }], cuts: [] }],
  ])('refuses %s', (_, pattern) => {
    expect(() => benchOrder({ W: 40, H: 26 }, pattern)).toThrow('not of this panel')
  })
})

describe('the drawing', () => {
  const draw = (panel: PanelToCut) => sheetOf([firstOf('Cloth', panel)]).panels[0]!

  test('of few cuts leaves room for the list, of many takes the page', () => {
    expect(draw(plainCloth(60, 60)).room).toBe('beside')
    const many = draw(plainCloth(300, 300))
    expect(many.list.length).toBeGreaterThan(200)
    expect(many.room).toBe('page')
  })

  // A4 is 210 by 297 mm (ISO 216), Letter 8.5 by 11 in; margins of 11 and 9 mm as on the bench's sheets.
  test.each([60, 120, 240, 400])('of a panel of %s quarter inches fits A4 and Letter', (long) => {
    for (const panel of [plainCloth(long, 20 + long), plainCloth(20 + long, long, 14)]) {
      const { drawing } = draw(panel)
      expect(drawing.width).toBeLessThanOrEqual(Math.min(210, 8.5 * 25.4) - 22)
      expect(drawing.height).toBeLessThanOrEqual(Math.min(297, 11 * 25.4) - 18 - 40)
    }
  })

  test('says the size of a piece in it, in a key where it is too small for that', () => {
    const words = (panel: PanelToCut) => textsOf(draw(panel).drawing).map((text) => text.words)
    expect(words(plainCloth(40, 40, 18, 22))).toContain('4 1/2 × 5 1/2')
    const small = words(plainCloth(120, 150, 10))
    expect(small).toContain('A: 2 1/2 × 2 1/2 in')
    expect(small.filter((word) => word === 'A').length).toBeGreaterThan(0)
  })

  test('keeps its numbers clear of each other in the most crowded cloth', () => {
    const panel = plainCloth(300, 300)
    expect(wrongWith(panel, patterns(panel)[0]!)).toEqual([])
  })
})

describe('the sheet', () => {
  test.each([
    ['en', /^Cut away from the body\. Close the blade each time.* maker come first\.$/],
    ['es', /^Corte hacia fuera del cuerpo\. Cierre la cuchilla cada vez/],
  ])('begins with the blade in %s', (code, words) => {
    const { caution } = sheetOf([pictureFront('Front')], code)
    expect(caution).toMatch(words)
  })

  test.each(['en', 'es'])('tells in %s that the picture stays whole in its block', (code) => {
    const { list, notes } = sheetOf([pictureFront('Front')], code).panels[0]!
    const block =
      code === 'en' ? 'the block, 14 1/2 × 14 1/2 in.' : 'el bloque, 14 1/2 × 14 1/2 in.'
    expect(
      list.filter(({ words }) => words.replaceAll('\u00a0', ' ').includes(block)),
    ).toHaveLength(1)
    expect(notes).toHaveLength(1)
  })

  test('warns where a way of cutting gives the picture up', () => {
    const { panel } = pictureFront('Front')
    const free = { ...panel, feature: { ...panel.feature!, required: false } }
    const pattern = patterns(free).find(({ counts }) => counts.at(-1) === 0)!
    const { notes } = sheetOf([{ name: 'Front', panel: free, pattern, times: 1 }]).panels[0]!
    expect(notes).toEqual([expect.stringMatching(/does not keep it: ask before the first cut/)])
  })

  test('says that pieces lie on their side only where they do', () => {
    const lying = { ...plainCloth(40, 10, 10, 40), pieces: [{ w: 10, h: 40, rot: true }] }
    expect(sheetOf([firstOf('Cloth', lying)]).panels[0]!.notes).toEqual([
      expect.stringMatching(/on their side/),
    ])
    expect(sheetOf([firstOf('Cloth', plainCloth(40, 40))]).panels[0]!.notes).toEqual([])
  })

  test('counts pieces over all panels, and for each role; what is too few is said', () => {
    const panels = [
      firstOf('Front', plainCloth(40, 40)),
      firstOf('Sleeve', plainCloth(20, 45), 2),
      firstOf('Back', plainCloth(40, 40), 0),
    ]
    const roles = [
      { w: 20, h: 20, role: 'light', count: 5 },
      { w: 20, h: 20, role: 'dark', count: 1 },
    ]
    const told = (given: typeof roles) =>
      cutSheet({ panels, roles: given, language: language('en') }).pieces.map(
        ({ count, words }) => [count, words.replaceAll('\u00a0', ' ')],
      )
    expect(told([])).toEqual([[8, '8 of 5 × 5 in']])
    expect(told(roles)).toEqual([[8, '8 of 5 × 5 in: 5 for light, 1 for dark, 2 to spare']])
    expect(told([{ ...roles[0]!, count: 9 }])).toEqual([
      [8, '8 of 5 × 5 in: 9 for light, 1 too few'],
    ])
    expect(sheetOf(panels).panels.map(({ heading }) => heading)).toEqual([
      'Front',
      'Sleeve, 2 alike',
    ])
  })

  test('leaves whole what gives no piece, and says so', () => {
    const { list, notes } = sheetOf([firstOf('Sleeve', plainCloth(12, 12))]).panels[0]!
    expect(list).toEqual([])
    expect(notes).toEqual(['Nothing is cut from this panel: it stays whole.'])
  })

  test('hostile names become words, never part of the page', () => {
    const name = '</title><script>alert("x")</script>{count}'
    const { drawing, alt } = sheetOf([firstOf(name, plainCloth(60, 60))]).panels[0]!
    const svg = toSvg(drawing, alt)
    expect(svg).not.toContain('<script')
    expect(svg).toContain('&lt;/title&gt;&lt;script&gt;alert(&quot;x&quot;)&lt;/script&gt;{count}')
  })

  test('who cannot see the drawing is told what it gives', () => {
    const { alt } = sheetOf([firstOf('Front', toCut(panelsOf('tshirt', 'M')[0]!, squares))])
      .panels[0]!
    expect(alt.title).toBe('How to cut: Front')
    expect(alt.description.replaceAll('\u00a0', ' ')).toMatch(
      /^The panel, 18 × 27 1\/2 in, seen from above\. It gives \d+ of 5 × 5 in, by \d+ cuts\./,
    )
  })
})
