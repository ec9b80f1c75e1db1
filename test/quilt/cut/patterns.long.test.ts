import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { PanelToCut } from '../../../src/quilt/cut/panel.ts'
import { patternCounts, patterns } from '../../../src/quilt/cut/patterns.ts'
import { everyCut } from '../../help/every-cut.ts'
import { replayed } from '../../help/replay-cuts.ts'

const upTo = (least: number, most: number) => fc.integer({ min: least, max: most })

const piece = fc
  .record({ w: upTo(1, 5), h: upTo(1, 5), rot: fc.boolean() })
  .filter(({ w, h }) => w * h > 1)

const defect = fc.record({ x: upTo(-1, 10), y: upTo(-1, 10), w: upTo(1, 4), h: upTo(1, 4) })

const featureIn = (W: number, H: number) =>
  fc
    .record({
      gw: upTo(1, 3),
      gh: upTo(1, 3),
      x: upTo(0, 99),
      y: upTo(0, 99),
      bw: upTo(0, 2),
      bh: upTo(0, 2),
      tol2: upTo(0, 3),
      required: fc.boolean(),
    })
    .map(({ x, y, bw, bh, ...it }) => ({
      ...it,
      gx: x % (W - it.gw + 1),
      gy: y % (H - it.gh + 1),
      bw: it.gw + bw,
      bh: it.gh + bh,
    }))

const smallPanel: fc.Arbitrary<PanelToCut> = fc
  .record({ W: upTo(4, 10), H: upTo(4, 10) })
  .chain(({ W, H }) =>
    fc.record({
      W: fc.constant(W),
      H: fc.constant(H),
      pieces: fc.array(piece, { minLength: 1, maxLength: 3 }),
      defects: fc.array(defect, { maxLength: 3 }),
      feature: fc.option(featureIn(W, H), { nil: undefined }),
    }),
  )

test('the patterns are those of trying every whole cut, and every list of cuts gives its counts', () => {
  let withFeature = 0
  fc.assert(
    fc.property(smallPanel, (panel) => {
      const found = patterns(panel)
      expect(found.map(({ counts }) => counts)).toEqual(everyCut(panel))
      expect(patternCounts(panel)).toEqual(found.map(({ counts }) => counts))
      for (const pattern of found) expect(replayed(panel, pattern)).toEqual([])
      withFeature += panel.feature ? 1 : 0
    }),
    { seed: 20_260_101, numRuns: 300 },
  )
  expect(withFeature).toBeGreaterThan(60)
})

test('a front with its armholes and a graphic is cut so that each list of cuts can be followed', () => {
  const front: PanelToCut = {
    W: 80,
    H: 106,
    pieces: [
      { w: 20, h: 20, rot: false },
      { w: 26, h: 14, rot: true },
    ],
    defects: [
      { x: 0, y: 0, w: 8, h: 32 },
      { x: 72, y: 0, w: 8, h: 32 },
      { x: 24, y: 0, w: 32, h: 18 },
    ],
    feature: { gx: 24, gy: 34, gw: 32, gh: 28, bw: 40, bh: 40, tol2: 8, required: true },
  }
  const found = patterns(front)
  expect(found.length).toBeGreaterThan(1)
  for (const pattern of found) {
    expect(pattern.counts.at(-1)).toBe(1)
    expect(replayed(front, pattern)).toEqual([])
  }
})

test('counts are clamped at what is of use, never refused', () => {
  const panel = { W: 12, H: 12, pieces: [{ w: 4, h: 4, rot: false }], defects: [] }
  expect(patterns(panel).map(({ counts }) => counts)).toEqual([[9]])
  const clamped = patterns({ ...panel, bounds: [5] })
  expect(clamped.map(({ counts }) => counts)).toEqual([[5]])
  expect(clamped[0]!.items.length).toBeGreaterThanOrEqual(5)
})

test('cloth too small for any piece gives one vector of zeros and no cut', () => {
  const panel = { W: 5, H: 5, pieces: [{ w: 6, h: 2, rot: true }], defects: [] }
  expect(patterns(panel)).toEqual([{ counts: [0], items: [], cuts: [] }])
})

test('cloth that is spoiled all over gives nothing', () => {
  const panel = {
    W: 9,
    H: 9,
    pieces: [{ w: 2, h: 2, rot: false }],
    defects: [{ x: -5, y: -5, w: 40, h: 40 }],
  }
  expect(patterns(panel).map(({ counts }) => counts)).toEqual([[0]])
})

test('a graphic that must be whole and has no place leaves no pattern', () => {
  const panel = {
    W: 10,
    H: 10,
    pieces: [{ w: 2, h: 2, rot: false }],
    defects: [],
    feature: { gx: 0, gy: 0, gw: 4, gh: 4, bw: 8, bh: 8, tol2: 0, required: true },
  }
  expect(patterns(panel)).toEqual([])
  expect(patterns({ ...panel, feature: { ...panel.feature, required: false } }).length).toBe(1)
})
