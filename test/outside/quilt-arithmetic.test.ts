import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  cornerstones,
  cutFor,
  quarteredNinePatch,
  sashStrips,
  setSize,
} from '../../src/quilt/arithmetic.ts'
import { backing, batting, binding, clothFor, yards } from '../../src/quilt/materials.ts'
import { clothGrams } from '../../src/quilt/parcels.ts'
import { rollLength } from '../../src/quilt/roll.ts'
import { pieceCount } from '../../src/quilt/yield.ts'
import { readCsv } from '../help/csv.ts'
import { rates } from '../help/knowledge.ts'

// Worked examples of the trade: tutorial tables (secondary), every row recomputed. The source of each
// stands in the last column of the file.
const examples = readCsv(new URL('quilt-worked-examples.csv', import.meta.url))

/** Examples that nothing of ours counts, and why. */
const notNeeded: Readonly<Record<string, string>> = {
  ...Object.fromEntries(
    ['Q03', 'Q04', 'Q05'].map((id) => [id, 'no layout has triangles, half or quarter squares']),
  ),
  ...Object.fromEntries(
    Array.from({ length: 11 }, (_, n) => [
      `Q${String(n + 7).padStart(2, '0')}`,
      'no layout is set on point, with triangles at its edges',
    ]),
  ),
  Q30: 'quilts are bound straight, never on the bias',
  Q37: 'sashing runs round the quilt too, never between the blocks alone',
  Q39: 'no layout has a border; sashing round the quilt is its edge',
  Q40: 'no layout is set on point',
  ...Object.fromEntries(
    ['Q57', 'Q58', 'Q59', 'Q60', 'Q61'].map((id) => [
      id,
      'weights of cloth are kept in grams a square metre and nowhere read in ounces',
    ]),
  ),
  Q63: 'a quilt has the size of its layout; nobody is asked for a mattress',
}

const numbers = (text: string): number[] => (text.match(/\d+(?:\.\d+)?/g) ?? []).map(Number)

const checked = new Set<string>()

const asCase = (row: Record<string, string>) => {
  checked.add(row.id!)
  return {
    id: row.id!,
    input: row.input!,
    given: numbers(row.input!),
    expected: numbers(row.expected!),
  }
}

const cases = (topic: RegExp) => {
  const found = examples.filter((row) => topic.test(row.topic!)).map(asCase)
  if (found.length === 0) throw new Error(`no example of ${topic}`)
  return found
}

const one = (id: string) => asCase(examples.find((row) => row.id === id)!)

test.each(cases(/^cut square$/))('$id cut side of a square: $input', ({ given, expected }) => {
  expect(cutFor(given[0]!, given[1]!)).toBe(expected[0])
})

test.each([one('Q02')])('$id cut sides of a rectangle: $input', ({ given, expected }) => {
  const [w, h, seam] = given as [number, number, number]
  expect([cutFor(w, seam), cutFor(h, seam)]).toEqual(expected)
})

// The triangle of this example is not ours; its square is.
test.each([one('Q06')])('$id cut side with a wider seam: $input', ({ given, expected }) => {
  expect(cutFor(given[0]!, given[1]!)).toBe(expected[1])
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

test.each([one('Q23')])('$id what to cut for a quartered block: $input', ({ given }) => {
  expect(quarteredNinePatch(14 / 3, 0.25).finished).toBeCloseTo(given[0]!, 10)
})

test.each(cases(/^nine-patch uncut$/))(
  '$id nine-patch left whole: $input',
  ({ given, expected }) => {
    const { ninePatch } = quarteredNinePatch(given[0]!, 0.25)
    expect([ninePatch, ninePatch - 2 * 0.25]).toEqual(expected)
  },
)

test.each([one('Q25')])('$id what to cut for a nine-patch left whole: $input', ({ given }) => {
  const cut = cutFor(given[0]! / 3, 0.25)
  expect(cut).toBeCloseTo(3.166667, 6)
  expect(quarteredNinePatch(cut, 0.25).ninePatch - 2 * 0.25).toBeCloseTo(given[0]!, 10)
})

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

describe('the back', () => {
  test.each(cases(/^backing, /))('$id from cloth of 42 in: $input', ({ given, expected }) => {
    expect(backing({ w: given[0]!, h: given[1]! }, { usableIn: 42 }).clothIn).toBe(expected[0])
  })

  test.each([one('Q34')])('$id with more over for a longarm: $input', ({ given, expected }) => {
    const [w, h, side] = given as [number, number, number]
    const [wide, long] = expected as [number, number]
    // One width that is just wide enough takes the length; one that is not has to be joined.
    const overIn = 2 * side
    expect(backing({ w, h }, { usableIn: wide, overIn })).toMatchObject({
      widths: 1,
      lengthIn: long,
    })
    expect(backing({ w, h }, { usableIn: wide - 0.25, overIn }).widths).toBe(2)
  })

  /** The three rules of the sheet: inches to buy of cloth that reaches over 40 in a width, seams off. */
  const byRule = (short: number, long: number): { widths: number; span: number; cloth: number } => {
    if (long <= 80) return { widths: 2, span: long, cloth: (short + 6) * 2 }
    if (short <= 80) return { widths: 2, span: short, cloth: (long + 6) * 2 }
    return { widths: 3, span: long, cloth: (short + 6) * 3 }
  }

  // Widths that overlap by a seam of half an inch reach over 83 1/2 in, and over 125 in.
  const reach = { 2: 2 * 42 - 0.5, 3: 3 * 42 - 1 } as Record<number, number>

  test('takes no more cloth than the three rules of the sheet, wherever these reach', () => {
    let same = 0
    let less = 0
    fc.assert(
      fc.property(fc.integer({ min: 30, max: 119 }), fc.integer({ min: 30, max: 119 }), (a, b) => {
        const rule = byRule(Math.min(a, b), Math.max(a, b))
        if (rule.span + 6 > reach[rule.widths]!) return
        const ours = backing({ w: a, h: b }, { usableIn: 42 }).clothIn
        expect(ours).toBeLessThanOrEqual(rule.cloth)
        if (ours === rule.cloth) same += 1
        else less += 1
      }),
      { seed: 20260101, numRuns: 2000 },
    )
    expect(same).toBeGreaterThan(500)
    expect(less).toBeGreaterThan(0)
  })

  test('is never short, where the rules of the sheet leave less over than they ask for', () => {
    // 78 in and 6 in over are more than two widths joined give; the rule counts two all the same.
    const rule = byRule(60, 78)
    expect(rule.span + 6).toBeGreaterThan(reach[rule.widths]!)
    const { widths, lengthIn } = backing({ w: 60, h: 78 }, { usableIn: 42 })
    expect([widths, lengthIn]).toEqual([2, 84])
  })
})

test.each([one('Q35')])('$id the smallest batting that reaches: $input', ({ given, expected }) => {
  const [w, h, over] = given as [number, number, number]
  const package_ = { w: expected.at(-2), h: expected.at(-1) }
  expect(batting({ w, h }, rates.batting, over)).toMatchObject({ of: package_, count: 1 })
  expect(batting({ w: h, h: w }, rates.batting, over)).toMatchObject({ of: package_, count: 1 })
})

test.each(cases(/^squares from yardage$/))(
  '$id cloth for squares: $input',
  ({ given, expected }) => {
    const [usable, side, need] = given as [number, number, number]
    expect(clothFor(need, { w: side, h: side }, usable)).toBe(expected[2])
    // Cloth that a layout always wants new is counted row by row, and comes to the same.
    expect(rollLength([{ size: { w: side, h: side }, count: need }], usable)).toBe(expected[2])
  },
)

test.each(cases(/^interfacing yardage$/))('$id interfacing: $input', ({ given, expected }) => {
  const [roll, side, need] = given as [number, number, number]
  const length = rollLength([{ size: { w: side, h: side }, count: need }], roll)
  expect(length).toBe(expected[2])
  expect(yards(length)).toBe(expected.at(-1))
})

test.each([one('Q62')])('$id eighths of a yard, sold by the quarter: $input', ({ expected }) => {
  expect(expected).toEqual([4.5, 9, 13.5, 18, 22.5, 27, 31.5])
  expect(expected.map(yards)).toEqual([0.25, 0.25, 0.5, 0.5, 0.75, 0.75, 1])
})

test.each([one('Q64')])('$id what cloth weighs: $input', ({ given, expected }) => {
  const [wideCm, longCm, gramsPerM2] = given as [number, number, number]
  const squareIn = (2 * wideCm * longCm) / 2.54 ** 2
  expect(clothGrams(squareIn, gramsPerM2)).toBeCloseTo(expected[2]!, 2)
})

describe('sets of blocks', () => {
  test.each([one('Q36')])('$id edge to edge: $input', ({ given, expected }) => {
    const [columns, rows, block] = given as [number, number, number]
    const { w, h } = setSize({ columns, rows, block, sash: 0 })
    expect([w, h, cutFor(w, 0.25), cutFor(h, 0.25)]).toEqual(expected)
  })

  test.each([one('Q38')])('$id sashed between and around: $input', ({ given, expected }) => {
    const [columns, rows, block, sash] = given as [number, number, number, number]
    const { w, h } = setSize({ columns, rows, block, sash })
    const [thin, long] = [cutFor(sash, 0.25), cutFor(block, 0.25)]
    const grid = { columns, rows }
    expect([w, h, sashStrips(grid), thin, long, cornerstones(grid), thin, thin]).toEqual(expected)
  })

  test.each([one('Q41')])('$id sashed all round: $input', ({ given, expected }) => {
    const [, block, columns, rows, sash] = given as [number, number, number, number, number]
    const { w, h } = setSize({ columns, rows, block, sash })
    expect([cutFor(block, 0.25), w, h]).toEqual(expected)
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

test('every example of the sheet is checked, or named with why it is not', () => {
  expect(examples).toHaveLength(64)
  expect([...checked, ...Object.keys(notNeeded)].sort()).toEqual(examples.map(({ id }) => id))
})
