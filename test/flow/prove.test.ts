import { describe, expect, test } from 'vitest'
import { checkTable } from '../../src/flow/check-table.ts'
import { proveTable } from '../../src/flow/prove.ts'
import { readTable } from '../../src/flow/read.ts'
import type { Domains, Table } from '../../src/flow/table-grammar.ts'

const domains: Domains = {
  weather: ['dry', 'wet', 'snow'],
  wind: ['calm', 'storm'],
  hour: { from: 0, to: 23 },
}

type Rows = Record<string, Record<string, unknown>>

const table = (rows: Rows, hit = 'first', reads = Object.keys(domains)): Table =>
  readTable({
    table: 'walks',
    hit,
    reads,
    gives: ['advice'],
    rows: Object.entries(rows).map(([id, when]) => ({
      id,
      when,
      give: { advice: 'x' },
      source: 'invented',
    })),
  })

describe('the proof of a table', () => {
  test('counts what each row decides', () => {
    const proof = proveTable(
      table({
        snow: { weather: 'snow' },
        night: { hour: { to: 5 } },
        storm: { wind: 'storm', hour: { from: 6, to: 21 } },
        rest: {},
      }),
      domains,
    )
    // 3 × 2 × 24 combinations. Snow: 48; of the other 96 the night takes 2 × 2 × 6, the storm 2 × 16.
    expect(proof).toEqual({
      findings: [],
      combinations: 144,
      covered: 144,
      taken: [48, 24, 32, 40],
    })
  })

  test('shows a gap by the fewest facts', () => {
    const { findings, covered } = proveTable(
      table({
        calm: { wind: 'calm' },
        day: { hour: { from: 6 } },
        dry: { weather: ['dry', 'wet'] },
      }),
      domains,
    )
    expect(findings).toEqual([
      {
        file: 'stored',
        line: 1,
        rule: 'gap',
        message: 'walks: no row matches 6 of 144 combinations',
        example: 'wind=storm, hour=0, weather=snow',
      },
    ])
    expect(covered).toBe(138)
  })

  test('leaves out of an example what does not matter', () => {
    const { findings } = proveTable(
      table({
        a: { weather: 'dry', hour: { to: 5 } },
        b: { weather: 'wet' },
        c: { weather: 'dry' },
      }),
      domains,
    )
    expect(findings[0]!.example).toBe('weather=snow')
  })

  test('finds a row that earlier rows cover together', () => {
    const { findings } = proveTable(
      table({
        early: { hour: { to: 11 } },
        late: { hour: { from: 12 } },
        noon: { hour: { from: 11, to: 12 } },
      }),
      domains,
    )
    expect(findings).toMatchObject([
      {
        rule: 'row-unreachable',
        message: 'noon never decides anything',
        example: 'taken before: early, late',
      },
    ])
  })

  test('allows gaps and overlaps where all matching rows are collected', () => {
    const proof = proveTable(
      table({ wet: { weather: 'wet' }, storm: { wind: 'storm' } }, 'collect'),
      domains,
    )
    // The hour is read by no row, so it is no part of the space: 3 × 2 combinations.
    expect(proof).toEqual({ findings: [], combinations: 6, covered: 4, taken: [2, 3] })
  })

  test('finds a row that nothing can match', () => {
    const { findings } = proveTable(
      table({ never: { weather: { not: ['dry', 'wet', 'snow'] } }, rest: {} }, 'collect'),
      domains,
    )
    expect(findings).toMatchObject([
      { rule: 'row-unreachable', example: 'taken before: no value fits it' },
    ])
  })

  test('ends for a table of many columns and rows', () => {
    const names = Array.from({ length: 18 }, (_, at) => `c${at}`)
    const wide: Domains = Object.fromEntries(names.map((name) => [name, ['a', 'b', 'c', 'd', 'e']]))
    const rows: Rows = {}
    for (let at = 0; at < 40; at += 1) {
      rows[`r${at}`] = { [names[at % 18]!]: 'a', [names[(at * 7 + 3) % 18]!]: ['b', 'c'] }
    }
    const proof = proveTable(table({ ...rows, rest: {} }, 'first', names), wide)
    expect(proof.combinations).toBe(5 ** 18)
    expect(proof.covered).toBe(5 ** 18)
    expect(proof.taken.reduce((sum, one) => sum + one, 0)).toBe(5 ** 18)
  })
})

describe('a table is refused for', () => {
  test.each<[string, Table, string, string]>([
    [
      'a column it does not read',
      table({ a: { hat: 'x' } }),
      'unknown-column',
      'a: the table does not read hat',
    ],
    [
      'a fact nobody knows',
      table({ a: {} }, 'first', ['hat']),
      'unknown-column',
      'hat is no fact that is known',
    ],
    [
      'a column twice',
      table({ a: {} }, 'first', ['wind', 'wind']),
      'duplicate-column',
      'wind stands twice',
    ],
    ['an unknown value', table({ a: { wind: 'gale' } }), 'unknown-value', 'a: wind is never gale'],
    [
      'an unknown value left out',
      table({ a: { wind: { not: 'gale' } } }),
      'unknown-value',
      'a: wind is never gale',
    ],
    [
      'a cell that leaves nothing',
      table({ a: { wind: { not: ['calm', 'storm'] } } }),
      'unknown-value',
      'a: wind leaves no value',
    ],
    [
      'a range over names',
      table({ a: { wind: { from: 1 } } }),
      'unknown-value',
      'a: wind wants named values',
    ],
    [
      'a name over numbers',
      table({ a: { hour: '3' } }),
      'unknown-value',
      'a: hour wants a range of numbers',
    ],
    [
      'a range beyond the domain',
      table({ a: { hour: { to: 24 } } }),
      'unknown-value',
      'a: hour goes beyond 0 to 23',
    ],
    [
      'an empty range',
      table({ a: { hour: { from: 3, to: 2 } } }),
      'unknown-value',
      'a: hour holds no number from 3 to 2',
    ],
  ])('%s', (_, one, rule, message) => {
    expect(checkTable(one, domains)).toEqual([{ file: 'stored', line: 1, rule, message }])
  })

  test('rows of one name, outputs it does not give, and outputs it lacks', () => {
    const one = table({ a: {}, b: {} })
    const rows = [one.rows[0]!, { ...one.rows[1]!, id: 'a', give: { hint: 'y' } }]
    expect(checkTable({ ...one, rows }, domains).map(({ rule }) => rule)).toEqual([
      'duplicate-id',
      'unknown-output',
      'output-missing',
    ])
  })

  test('nothing, when all is well', () => {
    const sound = table({ a: { wind: 'calm', hour: { from: 3 }, weather: { not: 'wet' } }, b: {} })
    expect(checkTable(sound, domains)).toEqual([])
  })
})
