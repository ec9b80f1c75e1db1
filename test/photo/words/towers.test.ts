import { expect, test } from 'vitest'
import type { Slab } from '../../../src/photo/words/picture.ts'
import { towersIn } from '../../../src/photo/words/towers.ts'

const line = (y: number, turn = 0, x = 150): Slab => ({ x, y, w: 160, h: 20, turn })
/** Three short words one above another, found as one. */
const tall: Slab = { x: 400, y: 75, w: 60, h: 90, turn: 0 }

test('short words that were found as one are cut into the rows of the lines beside them', () => {
  const { lines, rows } = towersIn([line(50), line(75), line(100), line(180), tall])
  expect(lines).toEqual([line(50), line(75), line(100), line(180)])
  expect(rows).toEqual([50, 75, 100].map((y) => ({ x: 400, y, w: 60, h: 20, turn: 0 })))
})

test('the rows run on as the lines do', () => {
  const { rows } = towersIn([line(50, 0.1), line(75, 0.1), line(200, 0.1), tall])
  expect(rows.map(({ y }) => Math.round(y))).toEqual([75, 100])
})

test('two words of one row make one row', () => {
  const { rows } = towersIn([line(50, 0, 80), line(52, 0, 250), line(75), line(100), tall])
  expect(rows).toHaveLength(3)
})

test('a heading in large letters is a line, and so is all where nothing stands tall', () => {
  const heading: Slab = { x: 200, y: 20, w: 300, h: 40, turn: 0 }
  const slabs = [heading, line(50), line(75), line(100)]
  expect(towersIn(slabs)).toEqual({ lines: slabs, rows: [] })
  expect(towersIn([])).toEqual({ lines: [], rows: [] })
})
