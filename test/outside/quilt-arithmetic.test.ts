import { describe, expect, test } from 'vitest'
import {
  cornerstones,
  cutFor,
  quarteredNinePatch,
  sashStrips,
  setSize,
} from '../../src/quilt/arithmetic.ts'
import { backing, batting, binding, clothFor, yards } from '../../src/quilt/materials.ts'
import { pieceCount } from '../../src/quilt/yield.ts'
import { readCsv } from '../help/csv.ts'
import { rates } from '../help/knowledge.ts'

// Worked examples of the trade: tutorial tables (secondary), every row recomputed. The source of each
// stands in the last column of the file.
const examples = readCsv(new URL('quilt-worked-examples.csv', import.meta.url))

const numbers = (text: string): number[] => (text.match(/\d+(?:\.\d+)?/g) ?? []).map(Number)

const cases = (topic: RegExp) => {
  const found = examples
    .filter((row) => topic.test(row.topic!))
    .map((row) => ({
      id: row.id!,
      input: row.input!,
      given: numbers(row.input!),
      expected: numbers(row.expected!),
    }))
  if (found.length === 0) throw new Error(`no example of ${topic}`)
  return found
}

test.each(cases(/^cut square$/))('$id cut side of a square: $input', ({ given, expected }) => {
  expect(cutFor(given[0]!, given[1]!)).toBe(expected[0])
})

test.each(cases(/^disappearing nine-patch$/))('$id quartered nine-patch: $input', (row) => {
  const [ninePatch, quarter, quarterFinished, unfinished, finished] = row.expected
  expect(quarteredNinePatch(row.given[0]!, row.given[1]!)).toEqual({
    ninePatch,
    quarter,
    quarterFinished,
    unfinished,
    finished,
  })
})

test.each(cases(/^nine-patch uncut$/))(
  '$id nine-patch left whole: $input',
  ({ given, expected }) => {
    expect(quarteredNinePatch(given[0]!, 0.25).ninePatch).toBe(expected[0])
  },
)

test('one quarter of a nine-patch is not the block: 5 in squares give 13 in and 6 1/2 in', () => {
  const { finished, quarterFinished } = quarteredNinePatch(5, 0.25)
  expect([finished, quarterFinished]).toEqual([13, 6.5])
})

test.each(cases(/^straight binding$/))('$id binding: $input', ({ given, expected }) => {
  const [w, h, joinIn, usableIn, stripIn] = given as [number, number, number, number, number]
  const found = binding({ w, h }, { joinIn, usableIn, stripIn })
  const [, length, strips, cloth] = expected
  expect(found).toEqual({ lengthIn: length, strips, clothIn: cloth })
  expect(yards(found.clothIn)).toBe(expected.at(-1))
})

test.each(cases(/^backing/))('$id backing from cloth of 42 in: $input', ({ given, expected }) => {
  expect(backing({ w: given[0]!, h: given[1]! }, { usableIn: 42 })).toBe(expected[0])
})

test('Q35 the smallest batting that reaches over every edge: 65 × 88 in takes 81 × 96', () => {
  expect(batting({ w: 65, h: 88 }, rates.batting, 3)).toMatchObject({ w: 81, h: 96 })
  expect(batting({ w: 88, h: 65 }, rates.batting, 3)).toMatchObject({ w: 81, h: 96 })
})

test.each(cases(/^squares from yardage$/))(
  '$id cloth for squares: $input',
  ({ given, expected }) => {
    const [usable, side, need] = given as [number, number, number]
    expect(clothFor(need, { w: side, h: side }, usable)).toBe(expected[2])
  },
)

test.each(cases(/^interfacing yardage$/))('$id interfacing: $input', ({ given, expected }) => {
  const [roll, side, need] = given as [number, number, number]
  const length = clothFor(need, { w: side, h: side }, roll)
  expect(length).toBe(expected[2])
  expect(yards(length)).toBe(expected.at(-1))
})

describe('sets of blocks', () => {
  test('Q36 five by six blocks of 12 in, edge to edge', () => {
    expect(setSize({ columns: 5, rows: 6, block: 12, sash: 0 })).toEqual({ w: 60, h: 72 })
  })

  test('Q38 four by five blocks of 12 in, sashed 2 in between and around', () => {
    const grid = { columns: 4, rows: 5 }
    expect(setSize({ ...grid, block: 12, sash: 2 })).toEqual({ w: 58, h: 72 })
    expect([sashStrips(grid), cornerstones(grid)]).toEqual([49, 30])
  })

  test('Q41 twelve panels of 14 in, three by four, sashed 2 in all round', () => {
    expect(setSize({ columns: 3, rows: 4, block: 14, sash: 2 })).toEqual({ w: 50, h: 66 })
  })
})

test.each(cases(/^squares from a fat quarter$/))(
  '$id squares out of a plain panel: $input',
  (row) => {
    const [w, h, side] = row.given as [number, number, number]
    const panel = { name: 'cloth', w, h, count: 1, defects: [] } as const
    expect(pieceCount(panel, { w: side, h: side })).toBe(row.expected[0])
  },
)
