import { expect, test } from 'vitest'
import { Failure } from '../../../src/base/failures.ts'
import { boardOfGrid } from '../../../src/quilt/place/board.ts'
import { place } from '../../../src/quilt/place/index.ts'
import { readInstance } from '../../../src/quilt/place/instance.ts'

const good = {
  rows: 2,
  cols: 2,
  cells: ['a', 'b', 'b', 'a'],
  types: [
    { garment: 'one', role: 'a', count: 2 },
    { garment: 'two', role: 'b', count: 2 },
  ],
  repeat: { '1': 100, '2': 30 },
  adj: [
    [0, 1],
    [1, 0],
  ],
}

function refused(value: unknown): string {
  try {
    place(readInstance(value))
  } catch (error) {
    if (error instanceof Failure && error.code === 'bad_input') {
      return `${error.details.field}: ${error.details.why}`
    }
    throw error
  }
  return 'taken'
}

test('takes an instance, and passes over keys it does not know', () => {
  expect(refused({ ...good, more: 1 })).toBe('taken')
})

const nested = (n: number): unknown => (n === 0 ? [] : [nested(n - 1)])

test.each([
  [
    'fewer pieces than cells',
    { types: [{ ...good.types[0]!, count: 1 }, good.types[1]!] },
    'types: 2 cells of the role "a", but 1 piece; there must be as many',
  ],
  [
    'more pieces than cells',
    { types: [good.types[0]!, { ...good.types[1]!, count: 3 }] },
    'types: 2 cells of the role "b", but 3 pieces; there must be as many',
  ],
  [
    'a role that no type has',
    { cells: ['a', 'b', 'b', 'c'] },
    'cells: cell 3 has the role "c", and no type has that role',
  ],
  [
    'pieces of a role that no cell has',
    {
      types: [...good.types, { garment: 'x', role: 'c', count: 1 }],
      adj: [
        [0, 0, 0],
        [0, 0, 0],
        [0, 0, 0],
      ],
    },
    'types: 1 piece of the role "c", but no cell has it',
  ],
  ['too few rows of costs', { adj: [[0, 1]] }, 'adj: 1 row for 2 types'],
  ['a short row of costs', { adj: [[0, 1], [1]] }, 'adj: row 1 has 1 number for 2 types'],
  ['no cells', { rows: 0, cols: 0, cells: [] }, 'rows: '],
  ['a grid of another size', { rows: 3 }, 'cells: 4 cells for 3 rows of 2'],
  ['rows that are no whole number', { rows: 1.5 }, 'rows: '],
  ['a grid beyond all bounds', { rows: 1e9, cols: 1e9 }, 'rows: '],
  [
    'a count under 0',
    { types: [{ ...good.types[0]!, count: -2 }, good.types[1]!] },
    'types.0.count: ',
  ],
  [
    'a cost under 0',
    {
      adj: [
        [0, -1],
        [1, 0],
      ],
    },
    'adj.0.1: ',
  ],
  [
    'a cost that is no number',
    {
      adj: [
        [0, '1'],
        [1, 0],
      ],
    },
    'adj.0.1: ',
  ],
  [
    'a cost beyond all sense',
    {
      adj: [
        [0, 1e10],
        [1, 0],
      ],
    },
    'adj.0.1: ',
  ],
  ['a repeat under 0', { repeat: { '1': -1 } }, 'repeat.1: '],
  ['a repeat at no distance', { repeat: { near: 1 } }, 'repeat.near: '],
  ['a repeat of a cell with itself', { repeat: { '0': 1 } }, 'repeat.0: '],
  ['a seed that is no whole number', { seed: 0.5 }, 'seed: '],
  ['no types', { types: [] }, 'types: '],
  ['a pin where no cell is', { pinned: [{ cell: 4, type: 0 }] }, 'pinned: there is no cell 4'],
  ['a pin of no type', { pinned: [{ cell: 0, type: 2 }] }, 'pinned: there is no type 2'],
  [
    'two pins in a cell',
    {
      pinned: [
        { cell: 0, type: 0 },
        { cell: 0, type: 0 },
      ],
    },
    'pinned: cell 0 is pinned twice',
  ],
  [
    'a pin of another role',
    { pinned: [{ cell: 0, type: 1 }] },
    'pinned: type 1 does not have the role of cell 0',
  ],
  ['cells nested without end', { cells: nested(500) }, 'cells.0: '],
])('%s is refused in words', (_, change, why) => {
  expect(refused({ ...good, ...change })).toContain(why)
})

test.each([null, 7, 'words', [], [good]])('%j is no instance', (value) => {
  expect(refused(value)).not.toBe('taken')
})

test('more pins of a type than it has pieces are refused', () => {
  const types = [
    { garment: 'one', role: 'a', count: 1 },
    { garment: 'two', role: 'a', count: 3 },
  ]
  const pinned = [
    { cell: 0, type: 0 },
    { cell: 1, type: 0 },
  ]
  const value = { ...good, cells: ['a', 'a', 'a', 'a'], types, pinned }
  expect(refused(value)).toBe('pinned: type 0 has too few pieces for its pins')
})

test('names like those of every object are names like any other', () => {
  const names = ['__proto__', 'constructor']
  const value = {
    ...good,
    cells: [names[0], names[1], names[1], names[0]],
    types: names.map((role) => ({ garment: role, role, count: 2 })),
  }
  expect(place(readInstance(value)).cells).toEqual([0, 1, 1, 0])
})

test('distances so many that it would take for ever are refused', () => {
  const side = 60
  const repeat = Object.fromEntries(Array.from({ length: 5000 }, (_, n) => [String(n + 1), 1]))
  const value = {
    ...good,
    rows: side,
    cols: side,
    cells: Array(side * side).fill('a'),
    types: [{ garment: 'one', role: 'a', count: side * side }],
    adj: [[0]],
    repeat,
  }
  expect(() => boardOfGrid(readInstance(value))).toThrow('too many distances')
})
