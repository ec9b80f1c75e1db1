import { describe, expect, test } from 'vitest'
import { readTable } from '../../src/flow/read.ts'
import { compileTable, decide } from '../../src/flow/table.ts'
import type { Domains } from '../../src/flow/table-grammar.ts'

const domains: Domains = {
  weather: ['dry', 'wet', 'snow'],
  hour: { from: 0, to: 23 },
}

const rows = [
  { id: 'snow', when: { weather: 'snow' } },
  { id: 'night', when: { hour: { to: 5 } } },
  { id: 'wet-day', when: { weather: ['wet'], hour: { from: 6, to: 20 } } },
  { id: 'not-dry', when: { weather: { not: 'dry' } } },
  { id: 'rest', when: {} },
].map((row) => ({ ...row, give: { advice: row.id }, source: 'invented' }))

const table = (hit: 'first' | 'collect') =>
  compileTable(
    readTable({ table: 'walks', hit, reads: ['weather', 'hour'], gives: ['advice'], rows }),
    domains,
  )

describe('a decision', () => {
  test.each([
    ['snow', 3, ['snow', 'night', 'not-dry', 'rest']],
    ['dry', 5, ['night', 'rest']],
    ['dry', 6, ['rest']],
    ['wet', 20, ['wet-day', 'not-dry', 'rest']],
    ['wet', 21, ['not-dry', 'rest']],
  ])('for %s weather at %i takes its rows in order', (weather, hour, ids) => {
    expect(decide(table('collect'), { weather, hour }).map(({ id }) => id)).toEqual(ids)
    expect(decide(table('first'), { weather, hour }).map(({ id }) => id)).toEqual(ids.slice(0, 1))
  })

  test.each([
    ['a missing fact', { weather: 'dry' }, 'hour'],
    ['a value outside its domain', { weather: 'hail', hour: 3 }, 'weather'],
    ['an hour past the last', { weather: 'dry', hour: 24 }, 'hour'],
    ['half an hour', { weather: 'dry', hour: 3.5 }, 'hour'],
    ['an hour in words', { weather: 'dry', hour: 'three' }, 'hour'],
  ])('from %s is refused by the name of the column', (_, facts, column) => {
    expect(() => decide(table('first'), facts as never)).toThrow(
      `bad_input {"table":"walks","column":"${column}"}`,
    )
  })

  test('reaches past the first 32 rows', () => {
    const many = Array.from({ length: 70 }, (_, at) => ({
      id: `at-${at}`,
      when: { hour: { from: at % 24, to: at % 24 } },
      give: { advice: 'x' },
      source: 'invented',
    }))
    const compiled = compileTable(
      readTable({ table: 'long', hit: 'collect', reads: ['hour'], gives: ['advice'], rows: many }),
      domains,
    )
    const ids = decide(compiled, { hour: 21 }).map(({ id }) => id)
    expect(ids).toEqual(['at-21', 'at-45', 'at-69'])
  })
})

test('a column without a domain is refused', () => {
  expect(() => compileTable(table('first').table, { weather: ['dry'] })).toThrow(
    'there is no column hour',
  )
})
