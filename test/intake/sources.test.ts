import { describe, expect, test } from 'vitest'
import { readFlowsFolder } from '../../src/intake/flows-folder.ts'
import { countKinds, figuresOf, kindOf, sourceKinds, sourcesOf } from '../../src/intake/sources.ts'
import { flowsFolder } from '../help/app.ts'
import { tables } from '../help/knowledge.ts'

const folder = readFlowsFolder(flowsFolder)
const figures = figuresOf(folder)

test('every figure has a source that says how sure it is', () => {
  expect(figures.filter(({ source }) => kindOf(source) === null)).toEqual([])
  expect(new Set(figures.map(({ figure }) => figure)).size).toBe(figures.length)
})

test('every row of every table is a figure', () => {
  const rows = tables.flatMap(({ table, rows }) => rows.map(({ id }) => `tables/${table}/${id}`))
  const named = figures.map(({ figure }) => figure).filter((one) => one.startsWith('tables/'))
  expect(named.sort()).toEqual(rows.sort())
})

test.each([
  ['iron/cool', 110, '°C'],
  ['tables/limits/label-cool', 110, '°C'],
  ['tables/limits/label-none', null, '°C'],
  ['fibres/cotton/ironMaxC', 200, '°C'],
  ['sizes/tshirt/L/widthIn', 22, 'in'],
  ['press/spare under the ceiling', 10, '°C'],
  ['layouts/air around a graphic', 0.75, 'in'],
  ['layouts/plain-squares/garments/throw', [8, 10], 'garments'],
  ['rates from 2026-01-01/interfacing/light/sole', 140, '°C'],
  ['rates from 2026-01-01/weight/jeans', 680, 'g'],
  ['rates from 2026-01-01/price/labour/cut_per_piece', 30, 'minor units'],
  ['rates from 2026-01-01/price/piecing/plain-squares', 1, 'times'],
  ['rates from 2026-01-01/thread/spool', 500, 'm'],
  ['rates from 2026-01-01/terms/deposit', 50, 'percent'],
  ['rates from 2026-01-01/box/small/size', { w: 12, h: 10, d: 4 }, 'in'],
])('%s is %j %s', (figure, value, unit) => {
  expect(figures.find((one) => one.figure === figure)).toMatchObject({ value, unit })
})

test.each([
  ['ISO 3758:2012, one dot', 'published'],
  ['16 CFR 423.6(b)(1): a label need not name ironing', 'published'],
  ['Regulation (EU) 1007/2011, Annex I', 'published'],
  ['a maker’s size chart (secondary)', 'secondary'],
  ['ISO 3758:2012, as in national guides (secondary)', 'secondary'],
  ['cloth above about 300 g/m²; common practice, no source', 'common practice'],
  ['16 CFR 1501 (small parts); from memory, unverified', 'from memory'],
  ['crushed pile (Polymers 2018); the rest common practice, from memory', 'from memory'],
  ["the shop's own price", 'own'],
  ["the shop's own term", 'own'],
  ["the shop's own choice", null],
  ['', null],
  ['everybody knows', null],
  ['ISO', null],
])('"%s" is %s: the least sure part counts', (source, kind) => {
  expect(kindOf(source)).toBe(kind)
})

describe('a figure without a source', () => {
  const changed = (part: 'tables' | 'layouts' | 'rates', change: (value: never) => unknown) =>
    figuresOf({
      ...folder,
      [part]: folder[part].map((one) => ({ ...one, value: change(one.value as never) })),
    })

  test.each([
    [
      'a row',
      changed('tables', ({ rows, ...table }: { rows: object[] }) => ({
        ...table,
        rows: rows.map((row, at) => (at === 2 ? { ...row, source: 'obvious' } : row)),
      })),
      /tables\//,
    ],
    [
      'a layout',
      changed('layouts', (layout: object) => ({ ...layout, sources: {} })),
      /layouts\/.*\/seam/,
    ],
    [
      'the rates',
      changed('rates', (rates: object) => ({ ...rates, sources: {} })),
      /rates from .*\/width/,
    ],
    [
      'the weights',
      changed('rates', (rates: { sources: object }) => ({
        ...rates,
        sources: { ...rates.sources, weights_g: '' },
      })),
      /weight\/tshirt/,
    ],
    ['one of our own', [{ figure: 'quilt/width', value: 1, source: '' }], /quilt\/width/],
  ])('of %s is refused by its name', (_, some, name) => {
    const unsourced = some.find(({ source }) => kindOf(source) === null)
    expect(unsourced?.figure).toMatch(name)
    expect(() => sourcesOf(some)).toThrow(
      expect.objectContaining({
        code: 'flows_invalid',
        details: expect.objectContaining({ file: unsourced!.figure }),
      }),
    )
  })
})

test('prices and terms are the shop’s own, and nothing else is', () => {
  const own = figures.filter(({ source }) => kindOf(source) === 'own')
  const named = figures.filter(({ figure }) => /^rates from [\d-]+\/(?:price|terms)\//.test(figure))
  expect(own).toEqual(named)
  const prices = (value: unknown, key = ''): number =>
    typeof value === 'object' && value !== null
      ? Object.entries(value).reduce((sum, [inner, one]) => sum + prices(one, inner), 0)
      : /^price|_per_yard$/.test(key)
        ? 1
        : 0
  const rates = folder.rates[0]!.value as Record<string, Record<string, object>>
  const { labour, piecing, teardown, stabilising, ...others } = rates
  const tables = [labour, piecing, teardown, stabilising]
  const counted = tables.reduce((sum, one) => sum + Object.keys(one!).length, 0)
  // Deposit, validity and turnaround are the three terms.
  expect(own).toHaveLength(counted + prices(others) + 3)
})

test('the counts of the kinds add up', () => {
  const { all, ...kinds } = countKinds(sourcesOf(figures))
  expect(Object.keys(kinds)).toEqual([...sourceKinds])
  expect(Object.values(kinds).reduce((sum, count) => sum + count)).toBe(all)
  expect(all).toBe(figures.length)
})
