import { expect, test } from 'vitest'
import { aimsOf, holds, lineOf } from './aims.ts'
import type { Lab } from './light.ts'
import type { Mask, Reading } from './reading.ts'
import { boxIou, maskIou, type Read, score } from './score.ts'
import type { Truth } from './truth.ts'

const truth = (told: Partial<Truth> = {}): Truth => ({
  file: 'a.jpg',
  mask: 'a.mask.png',
  seed: 1,
  number: 0,
  split: 'tune',
  width: 1500,
  height: 2000,
  fault: null,
  kind: 't-shirt',
  print: 'solid',
  garment: { x: 0.1, y: 0.1, w: 0.8, h: 0.8 },
  value: 'light',
  graphic: null,
  lightness: 70,
  colours: [{ lab: [70, 0, 0], share: 0.9 }],
  sheet: null,
  size: null,
  traits: { ground: 'wood' },
  ...told,
})

const reading = (read: Partial<Reading> = {}): Reading => ({
  fitness: { ok: true, problems: [] },
  print: { class: 'solid', confidence: 0.9 },
  graphic: null,
  garment: null,
  colours: [{ lab: [70, 0, 0], share: 1 }],
  value: 'light',
  scale: null,
  size: null,
  ...read,
})

const read = (told: Partial<Truth>, as: Partial<Reading>): Read => ({
  truth: truth(told),
  reading: reading(as),
})

test('a reading that says what is shown is right in everything that was asked', () => {
  const { print, colour, value, misread } = score([read({}, {})])
  expect(print).toEqual({
    right: 1,
    byClass: { solid: 1, single: null, allover: null, 'stripe-check': null },
    worst: 1,
    sure: 1,
    rightWhereSure: 1,
  })
  expect(colour).toEqual({ count: 1, median: 0, p90: 0 })
  expect(value).toBe(1)
  expect(misread).toEqual([])
})

test('the worst class counts by itself, and no answer is a wrong one', () => {
  const { print, misread } = score([
    read({}, {}),
    read({}, {}),
    read({ file: 'b.jpg', print: 'allover' }, { print: { class: 'single', confidence: 0.4 } }),
    read({ file: 'c.jpg', print: 'allover' }, { print: null }),
    read({ print: 'allover' }, { print: { class: 'allover', confidence: 0.8 } }),
  ])
  expect(print.right).toBe(3 / 5)
  expect(print.worst).toBe(1 / 3)
  expect(print.sure).toBe(3 / 5)
  expect(print.rightWhereSure).toBe(1)
  expect(misread).toEqual([
    { file: 'b.jpg', print: 'allover', as: 'single', confidence: 0.4 },
    { file: 'c.jpg', print: 'allover', as: null, confidence: 0 },
  ])
})

test('photos with a fault are asked for their fault alone, and false alarms are those on sound photos', () => {
  const named = (...problems: Reading['fitness']['problems']) => ({
    fitness: { ok: problems.length === 0, problems },
  })
  const { print, fitness, sound } = score([
    read({ fault: 'dark', print: 'allover' }, named('dark')),
    read({ fault: 'dark' }, named('blurred')),
    read({}, named()),
    read({}, named('blurred')),
    read({}, named()),
    read({}, named()),
  ])
  expect(sound).toBe(4)
  expect(print.right).toBe(1)
  expect(fitness.dark).toEqual({ caught: 1 / 2, falseAlarms: 0 })
  expect(fitness.blurred).toEqual({ caught: null, falseAlarms: 1 / 4 })
})

test('boxes and masks are compared by common area', () => {
  const box = { x: 0, y: 0, w: 0.4, h: 0.4 }
  expect(boxIou(box, box)).toBe(1)
  expect(boxIou(box, { ...box, x: 0.2 })).toBeCloseTo(1 / 3)
  expect(boxIou(box, { ...box, x: 0.5 })).toBe(0)
  const left = { data: Uint8Array.of(255, 0, 255, 0), width: 2, height: 2 }
  const top = { data: Uint8Array.of(255, 255, 255, 255, 0, 0, 0, 0), width: 4, height: 2 }
  expect(maskIou(left, left)).toBe(1)
  expect(maskIou(left, top)).toBe(1 / 3)

  const masked = (mask?: Mask): Read => ({ ...read({}, mask ? { mask } : {}), mask: left })
  expect(score([masked(left), masked(top), masked()]).maskIou).toBeCloseTo(4 / 9)
  expect(score([masked()]).maskIou).toBeNull()
})

test('a graphic that was not found counts as missed altogether', () => {
  const graphic = { x: 0.3, y: 0.3, w: 0.2, h: 0.2 }
  const single = { print: 'single', graphic } as const
  const found = score([read(single, { graphic }), read(single, { graphic }), read(single, {})])
  expect(found.graphic).toEqual({ count: 3, medianIou: 1, half: 2 / 3 })
})

/**
 * Pairs 1, 7 and 17 of the test data in Sharma, Wu and Dalal, "The CIEDE2000 color-difference formula"
 * (2005), table 1, with their difference.
 */
test.each([
  [[50, 2.6772, -79.7751], [50, 0, -82.7485], 2.0425],
  [[50, 0, 0], [50, -1, 2], 2.3669],
  [[50, 2.5, 0], [73, 25, -18], 27.1492],
] as [Lab, Lab, number][])('%j and %j are %f apart', (one, other, apart) => {
  const { colour } = score([
    read({ colours: [{ lab: one, share: 0.8 }] }, { colours: [{ lab: other, share: 1 }] }),
  ])
  expect(colour!.median).toBeCloseTo(apart, 4)
})

test('either of two colours that cover about as much may be the largest, a smaller one not', () => {
  const white: Lab = [95, 0, 0]
  const navy: Lab = [20, 5, -25]
  const as = (lab: Lab, second: number) =>
    score([
      read(
        {
          colours: [
            { lab: white, share: 0.5 },
            { lab: navy, share: second },
          ],
        },
        { colours: [{ lab, share: 0.5 }] },
      ),
    ]).colour!.median
  expect(as(navy, 0.48)).toBe(0)
  expect(as(navy, 0.3)).toBeGreaterThan(30)
  expect(as(white, 0.3)).toBe(0)
})

const corners = [
  [100, 100],
  [300, 110],
  [295, 400],
  [95, 390],
] as const
const sheet = { by: 'a4', corners, turn: 0, contrasts: true, whole: true } as const
const size = {
  garmentWidthIn: 20,
  garmentLengthIn: 30,
  graphicWidthIn: null,
  graphicHeightIn: null,
}

test('a sheet is found by its size and its corners, in whatever order they are told', () => {
  const scale = { by: 'a4', mmPerPx: 1, errorPct: 1 } as const
  const turned = [...corners.slice(2), ...corners.slice(0, 2)]
  const off = (by: number) => [[100 + by, 100] as const, ...corners.slice(1)]
  const found = (as: Reading['scale'], told: Partial<Truth> = { sheet }) =>
    score([read(told, { scale: as })]).sheet
  expect(found({ ...scale, corners: turned })).toEqual({ found: 1, asked: 1, wrong: [] })
  // 2 % of 2000 px.
  expect(found({ ...scale, corners: off(39) }).wrong).toEqual([])
  expect(found({ ...scale, corners: off(41) })).toEqual({ found: 0, asked: 1, wrong: ['a.jpg'] })
  expect(found({ ...scale, by: 'letter' }).wrong).toEqual(['a.jpg'])
  expect(found(null)).toEqual({ found: 0, asked: 1, wrong: [] })
  expect(found(scale, { sheet: null }).wrong).toEqual(['a.jpg'])
  expect(found(scale, { sheet: { ...sheet, whole: false } })).toEqual({
    found: null,
    asked: 0,
    wrong: ['a.jpg'],
  })
  // A hair of it is covered and its corners are told as they are: 4 % of the 200 px of its shortest side.
  const covered = { sheet: { ...sheet, whole: false } }
  expect(found({ ...scale, corners: off(7) }, covered).wrong).toEqual([])
  expect(found({ ...scale, corners: off(9) }, covered).wrong).toEqual(['a.jpg'])
  expect(found(null, { sheet: { ...sheet, contrasts: false } })).toEqual({
    found: null,
    asked: 0,
    wrong: [],
  })
})

test('sizes are asked of photos whose sheet was rightly found, by paper and by card apart', () => {
  const by = (kind: 'a4' | 'id1', as: 'a4' | 'id1', width: number) =>
    read(
      { sheet: { ...sheet, by: kind }, size },
      {
        scale: { by: as, mmPerPx: 1, errorPct: 1 },
        size: { ...size, garmentWidthIn: width },
      },
    )
  const { size: errors } = score([by('a4', 'a4', 20.4), by('a4', 'id1', 40), by('id1', 'id1', 19)])
  expect(errors.paper!.count).toBe(2)
  expect(errors.paper!.median).toBeCloseTo(0.01)
  expect(errors.paper!.p90).toBeCloseTo(0.018)
  expect(errors.card!.p90).toBeCloseTo(0.045)
})

test('an aim holds where it reaches its bound, and never where no photo was asked', () => {
  const named = (name: string, of: readonly Read[]) =>
    aimsOf(score(of)).find((aim) => aim.name === name)!
  const right = read({}, {})
  const wrong = read({ file: 'b.jpg' }, { print: { class: 'single', confidence: 0.9 } })
  const many = (count: number) => Array.from({ length: count }, () => right)
  expect(holds(named('print class', [...many(47), wrong, wrong, wrong]))).toBe(true)
  expect(holds(named('print class', [...many(46), wrong, wrong, wrong, wrong]))).toBe(false)
  expect(holds(named('wrong sheets used', many(2)))).toBe(true)
  const invented = read({}, { scale: { by: 'a4', mmPerPx: 1, errorPct: 1 } })
  expect(holds(named('wrong sheets used', [invented]))).toBe(false)
  expect(named('dark caught', many(2)).value).toBeNull()
  expect(holds(named('dark caught', many(2)))).toBe(false)
  expect(lineOf(named('print class', many(1)))).toMatch(/^ {2}print class +1 {3}at least 0.94$/)
})
