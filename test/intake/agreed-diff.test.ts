import fc from 'fast-check'
import { expect, test } from 'vitest'
import { diffOf, isNothing } from '../../src/intake/agreed-diff.ts'
import type { AgreedFigures } from '../../src/intake/agreed-figures.ts'
import { lineCodes } from '../../src/quilt/lines.ts'

const base: AgreedFigures = {
  garments: [
    { n: 1, name: 'Blue flannel', kind: 'button-shirt', grade: 'sound' },
    { n: 2, name: null, kind: 'scarf', grade: 'eyes' },
  ],
  price: {
    currency: 'USD',
    lines: [
      { code: 'teardown', minor: 900 },
      { code: 'cutting', minor: 3_000 },
    ],
    total: { low: 3_900, likely: 3_900, high: 5_000 },
  },
  quilt: { layout: 'plain-squares', size: 'throw', quilts: 1 },
  needBy: 86_400_000,
}

test('tells garments, grades, lines, the total, the quilt and the day', () => {
  const after: AgreedFigures = {
    garments: [
      { n: 2, name: null, kind: 'scarf', grade: 'care' },
      { n: 3, name: 'Apron', kind: 'apron', grade: 'sound' },
    ],
    price: {
      currency: 'USD',
      lines: [
        { code: 'cutting', minor: 2_000 },
        { code: 'batting', minor: 1_800 },
      ],
      total: { low: 3_800, likely: 3_800, high: 3_800 },
    },
    quilt: { layout: 'plain-squares', size: 'crib', quilts: 1 },
    needBy: null,
  }
  const diff = diffOf(base, after)
  expect(diff.added.map(({ n }) => n)).toEqual([3])
  expect(diff.dropped.map(({ n }) => n)).toEqual([1])
  expect(diff.regraded).toMatchObject([{ garment: { n: 2 }, from: 'eyes', to: 'care' }])
  expect(diff.price).toEqual({
    currency: 'USD',
    lines: [
      { code: 'cutting', byMinor: -1_000 },
      { code: 'batting', byMinor: 1_800 },
      { code: 'teardown', byMinor: -900 },
    ],
    totalMinor: -100,
  })
  expect(diff.quilt?.to.size).toBe('crib')
  expect(diff.needBy).toEqual({ from: 86_400_000, to: null })
  expect(isNothing(diff)).toBe(false)
})

test('the same twice is nothing, and a price that is missing or foreign is not compared', () => {
  expect(isNothing(diffOf(base, base))).toBe(true)
  expect(diffOf({ ...base, price: null }, base).price).toBeNull()
  const yen = { ...base, price: { ...base.price!, currency: 'JPY' } }
  expect(diffOf(yen, base).price).toBeNull()
})

test('lines that change add up to what the total changes by, and backwards is the opposite', () => {
  const lines = fc
    .uniqueArray(fc.constantFrom(...lineCodes), { maxLength: lineCodes.length })
    .chain((codes) =>
      fc
        .array(fc.integer({ min: 0, max: 1_000_000 }), {
          minLength: codes.length,
          maxLength: codes.length,
        })
        .map((amounts) => codes.map((code, i) => ({ code, minor: amounts[i]! }))),
    )
  const figures = lines.map((own): AgreedFigures => {
    const likely = own.reduce((sum, { minor }) => sum + minor, 0)
    const total = { low: likely, likely, high: likely }
    return { ...base, price: { currency: 'USD', lines: own, total } }
  })
  fc.assert(
    fc.property(figures, figures, (before, after) => {
      const there = diffOf(before, after).price!
      expect(there.lines.reduce((sum, { byMinor }) => sum + byMinor, 0)).toBe(there.totalMinor)
      expect(diffOf(after, before).price!.totalMinor).toBe(-there.totalMinor || 0)
    }),
  )
})
