import { expect, test } from 'vitest'
import { bridgesIn } from '../../../src/photo/words/bridges.ts'
import { inOrder, type ReadSlab } from '../../../src/photo/words/order.ts'

/** Words whose left end is at x, on a row of lines 20 pixels apart, eight pixels a letter. */
const at = (x: number, row: number, text: string): ReadSlab => ({
  text,
  sure: 1,
  others: [],
  slab: { x: x + text.length * 4, y: row * 20 + 10, w: text.length * 8, h: 14, turn: 0 },
})

const left = ['94% COTTON,', 'ELASTANE', 'POCKET:', '55% POLYESTER', '45% LINEN']
const right = [
  'HAND WASH ONLY',
  'TUMBLE DRY LOW',
  'MADE IN PERU',
  'KEEP AWAY FROM',
  'FIRE AND FLAME',
]
const columns = [
  ...left.map((text, row) => at(0, row, text)),
  ...right.map((text, row) => at(140, row, text)),
]

test('lines that keep to their columns are none', () => {
  expect(bridgesIn(columns)).toEqual([])
})

test('a line that runs over both columns is cut where the second begins, and its halves keep apart', () => {
  const across = at(0, 2, 'POCKET:           MADE IN PERU')
  const read = [...columns.filter(({ slab }) => slab.y !== 50), across]
  const [bridge, ...more] = bridgesIn(read)
  expect(more).toEqual([])
  expect(bridge!.whole).toBe(across)
  const [first, second] = bridge!.parts
  expect(first.x + first.w / 2).toBeLessThan(140)
  expect(second.x - second.w / 2).toBeCloseTo(140)
  expect(second.x + second.w / 2).toBeCloseTo(240)
  const halves = [
    { ...across, text: 'POCKET:', slab: first },
    { ...across, text: 'MADE IN PERU', slab: second },
  ]
  const parted = read.flatMap((one) => (one === across ? halves : [one]))
  expect(inOrder(parted).map(({ text }) => text)).toEqual([...left, ...right])
})

test('lines of one column are none, however long one is', () => {
  const read = [
    ...left.map((text, row) => at(0, row, text)),
    at(0, 6, 'MACHINE WASH COLD WITH LIKE COLORS'),
  ]
  expect(bridgesIn(read)).toEqual([])
})

test('where many lines run across there are no columns', () => {
  const across = [5, 6, 7, 8].map((row) => at(0, row, 'MACHINE WASH COLD, ONLY NON-CHLORINE'))
  expect(bridgesIn([...columns, ...across])).toEqual([])
})
