import { describe, expect, test } from 'vitest'
import { demand, designOf } from '../../../src/quilt/design.ts'
import type { Extent, Role } from '../../../src/quilt/layout.ts'
import { besideCost, type Lab, neutral } from '../../../src/quilt/place/colours.ts'
import { gridOf, type QuiltPiece } from '../../../src/quilt/place/grid.ts'
import {
  type LaidQuilt,
  type LayJob,
  layQuilt,
  type PiecesGiven,
  swapEffect,
} from '../../../src/quilt/place/lay-quilt.ts'
import { layouts } from '../../help/knowledge.ts'

const five: Extent = { w: 5, h: 5 }
const finished = 4.5

/** Squares in rows and columns, by the first letter of their role. */
function squares(...rows: string[]): QuiltPiece[] {
  const roles: Readonly<Record<string, Role>> = { f: 'focal', b: 'background', a: 'accent' }
  return rows.flatMap((row, y) =>
    [...row].map((letter, x) => ({
      role: roles[letter]!,
      cut: five,
      parts: [{ x: x * finished, y: y * finished, w: finished, h: finished }],
      sash: false,
    })),
  )
}

const gives = (garment: number, role: Role, count: number): PiecesGiven => ({
  garment,
  role,
  size: five,
  count,
})

const job = (pieces: readonly QuiltPiece[], more: Partial<LayJob> = {}): LayJob => ({
  pieces,
  given: [],
  colours: [],
  cloth: {},
  seed: 1,
  pins: [],
  ...more,
})

const colourOf = ({ colours, cloth, pieces }: LayJob, garment: number | null, cell: number): Lab =>
  (garment === null
    ? cloth[pieces[cell]!.role]
    : colours.find((one) => one.garment === garment)?.colour) ?? neutral

/** The cost of squares in `columns`, by the rule alone: 100, 30 and 12 for a garment beside itself, and colours. */
function costOf(one: LayJob, cells: LaidQuilt['cells'], columns: number): number {
  const repeats: Readonly<Record<number, number>> = { 1: 100, 2: 30, 4: 12 }
  let sum = 0
  for (const [i, a] of cells.entries()) {
    for (const [j, b] of cells.entries()) {
      if (j <= i) continue
      const dx = (j % columns) - (i % columns)
      const dy = Math.floor(j / columns) - Math.floor(i / columns)
      const d2 = dx * dx + dy * dy
      if (a !== null && a === b) sum += repeats[d2] ?? 0
      if (d2 === 1) sum += besideCost(colourOf(one, a, i), colourOf(one, b, j))
    }
  }
  return sum
}

const navy: Lab = [20, 5, -25]
const cream: Lab = [90, 0, 12]
const rust: Lab = [45, 40, 40]
const colours = [navy, cream, rust].map((colour, n) => ({ garment: n + 1, colour }))

describe('bought cloth may lie beside itself, a garment pays for it', () => {
  const pieces = squares('ff', 'ff')

  test('four pieces of one garment', () => {
    // By hand: four edges at 100 and at 30 for equal colour and lightness, two corners at 30.
    const laid = layQuilt(job(pieces, { given: [gives(7, 'focal', 4)] }))
    expect(laid).toMatchObject({ cells: [7, 7, 7, 7], cost: 580, touching: 4 })
  })

  test('four bought pieces', () => {
    const laid = layQuilt(job(pieces))
    expect(laid).toMatchObject({ cells: [null, null, null, null], cost: 120, touching: 0 })
  })
})

/** Every order of the letters, each once. */
function orders(letters: readonly (number | null)[]): (number | null)[][] {
  if (letters.length === 0) return [[]]
  return [...new Set(letters)].flatMap((first) => {
    const at = letters.indexOf(first)
    return orders(letters.toSpliced(at, 1)).map((rest) => [first, ...rest])
  })
}

test.each([1, 2, 3])('a small quilt with bought cloth costs as little as any, seed %i', (seed) => {
  const one = job(squares('fff', 'fff', 'fff'), {
    given: [gives(1, 'focal', 3), gives(2, 'focal', 2), gives(3, 'focal', 1)],
    colours,
    cloth: { focal: [60, -20, 10] },
    seed,
  })
  const all = orders([1, 1, 1, 2, 2, 3, null, null, null])
  expect(all.length).toBe(5040)
  const laid = layQuilt(one)
  expect(laid.cost).toBe(Math.min(...all.map((cells) => costOf(one, cells, 3))))
  expect(laid.cost).toBe(costOf(one, laid.cells, 3))
})

const mixed = job(squares('fbfbf', 'bfafb', 'fbfbf', 'bfafb'), {
  given: [
    gives(1, 'focal', 5),
    gives(2, 'background', 4),
    gives(1, 'background', 2),
    gives(3, 'focal', 2),
  ],
  colours,
  cloth: { accent: rust, background: cream },
})

test('every piece lies where one of its role is wanted, and as many as are given', () => {
  const { cells, dropped } = layQuilt(mixed)
  const counts = (role: Role, garment: number | null) =>
    cells.filter((one, n) => one === garment && mixed.pieces[n]!.role === role).length
  for (const { garment, role, count } of mixed.given) {
    expect(counts(role as Role, garment)).toBe(count)
  }
  expect([counts('accent', null), counts('focal', null), counts('background', null)]).toEqual([
    2, 3, 2,
  ])
  expect(dropped).toEqual([])
})

test('the same seed gives the same quilt', () => {
  expect(layQuilt(mixed)).toEqual(layQuilt(structuredClone(mixed)))
})

describe('sizes', () => {
  const [a, b] = squares('ff')
  const strip: QuiltPiece = { ...b!, cut: { w: 3, h: 11 } }

  test('a piece goes only where one of its size is wanted, whichever side is told first', () => {
    const given = [{ ...gives(1, 'focal', 1), size: { w: 11, h: 3 } }, gives(2, 'focal', 1)]
    expect(layQuilt(job([a!, strip], { given })).cells).toEqual([2, 1])
  })

  test('what the quilt does not take is a fault', () => {
    const tooMany = job([a!, strip], { given: [gives(1, 'focal', 2)] })
    expect(() => layQuilt(tooMany)).toThrow('garment 1 gives 2 of focal 5 × 5, of 1 left')
    const strange = job([a!], { given: [gives(1, 'accent', 1)] })
    expect(() => layQuilt(strange)).toThrow('of 0 left')
  })
})

describe('pins', () => {
  test('what a person has laid stays where it is', () => {
    const pins = [
      { cell: 0, garment: 1 },
      { cell: 2, garment: 1 },
      { cell: 4, garment: null },
    ]
    const { cells, dropped } = layQuilt({ ...mixed, pins })
    expect([cells[0], cells[2], cells[4]]).toEqual([1, 1, null])
    expect(dropped).toEqual([])
  })

  test('pins that hold no longer are dropped and told, and the quilt is laid', () => {
    const gone = [
      { cell: 99, garment: 1 },
      { cell: -1, garment: null },
      // No such garment; not for this role; a second pin on one cell; a third piece of two.
      { cell: 0, garment: 9 },
      { cell: 1, garment: 3 },
      { cell: 2, garment: null },
      { cell: 6, garment: 3 },
    ]
    const kept = [
      { cell: 2, garment: 3 },
      { cell: 4, garment: 3 },
    ]
    const pins = [...gone.slice(0, 4), ...kept, ...gone.slice(4)]
    const { cells, dropped } = layQuilt({ ...mixed, pins })
    expect(dropped).toEqual(gone)
    expect([cells[2], cells[4]]).toEqual([3, 3])
  })
})

/** Pairs of one garment side by side or one above the other, in `columns`. */
const touchingIn = (cells: LaidQuilt['cells'], columns: number): number =>
  cells.filter((one, n) => one !== null && (n + 1) % columns > 0 && cells[n + 1] === one).length +
  cells.filter((one, n) => one !== null && cells[n + columns] === one).length

test('what a change of two cells does is what the whole quilt differs by', () => {
  const { cells } = layQuilt(mixed)
  const cost = costOf(mixed, cells, 5)
  let changes = 0
  let touching = 0
  for (const a of cells.keys()) {
    for (const b of cells.keys()) {
      const effect = swapEffect(mixed, { cells }, a, b)
      if (mixed.pieces[a]!.role !== mixed.pieces[b]!.role) {
        expect(effect).toBeNull()
        continue
      }
      const changed = cells.with(a, cells[b]!).with(b, cells[a]!)
      const after = touchingIn(changed, 5)
      expect(effect).toEqual({
        cost: costOf(mixed, changed, 5) - cost,
        touching: { before: touchingIn(cells, 5), after },
      })
      if (effect!.cost !== 0) changes += 1
      if (after > 0) touching += 1
    }
  }
  expect(changes).toBeGreaterThan(20)
  expect(touching).toBeGreaterThan(0)
  expect(swapEffect(mixed, { cells }, 0, 99)).toBeNull()
})

test('a quilt of no pieces, and one of a single piece', () => {
  expect(layQuilt(job([]))).toEqual({ cells: [], cost: 0, touching: 0, proven: true, dropped: [] })
  expect(layQuilt(job(squares('f'), { given: [gives(4, 'focal', 1)] })).cells).toEqual([4])
})

test('what every layout asks for lies in its grid', () => {
  for (const layout of layouts) {
    const design = designOf(layout, 'crib', [])
    const pieces = gridOf(design).pieces
    const given = demand(design).pieces.map((one) => ({ ...one, garment: 1 }))
    expect(layQuilt(job(pieces, { given })).cells).toEqual(pieces.map(() => 1))
  }
})
