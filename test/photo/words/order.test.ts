import { expect, test } from 'vitest'
import { inOrder, type ReadSlab } from '../../../src/photo/words/order.ts'

/** Words whose left end is at x, on a row of lines 20 pixels apart. */
const at = (x: number, row: number, text: string, sure = 1): ReadSlab => ({
  text,
  sure,
  others: [],
  slab: { x: x + text.length * 4, y: row * 20 + 10, w: text.length * 8, h: 14, turn: 0 },
})

const texts = (read: readonly ReadSlab[]): string[] => inOrder(read).map(({ text }) => text)

test('lines are read from above, their words from the left, whatever order they were found in', () => {
  const read = [at(90, 1, '20%'), at(0, 0, 'SHELL'), at(0, 1, 'COTTON'), at(0, 2, 'WASH COLD')]
  expect(texts(read)).toEqual(['SHELL', 'COTTON 20%', 'WASH COLD'])
})

test('a line is as sure as its least sure word', () => {
  expect(inOrder([at(0, 0, 'COTTON', 0.9), at(90, 0, '100%', 0.3)])).toEqual([
    { text: 'COTTON 100%', sure: 0.3, others: [] },
  ])
})

test('a number apart from words that run askew may be of another row', () => {
  const askew = { ...at(0, 0, 'COTTON'), slab: { ...at(0, 0, 'COTTON').slab, turn: 0.08 } }
  const [line] = inOrder([askew, at(140, 0, '92%')])
  expect(line!.text).toBe('COTTON 92%')
  expect(line!.sure).toBeLessThan(0.3)
  expect(inOrder([askew, at(140, 0, 'WOOL')])[0]!.sure).toBe(1)
})

test('another number in one word is another line', () => {
  const share = { ...at(90, 0, '85%', 0.6), others: [{ text: '35%', sure: 0.2 }] }
  expect(inOrder([at(0, 0, 'COTTON'), share])).toEqual([
    { text: 'COTTON 85%', sure: 0.6, others: [{ text: 'COTTON 35%', sure: 0.2 }] },
  ])
})

test('columns of words and shares are read one after the other', () => {
  const read = [
    ...['60% COTTON', '40% LINEN', 'IRON WARM'].map((text, row) => at(0, row, text)),
    ...['60% ALGODON', '40% LINO', 'PLANCHA TIBIA'].map((text, row) => at(140, row, text)),
  ]
  expect(texts(read)).toEqual([
    '60% COTTON',
    '40% LINEN',
    'IRON WARM',
    '60% ALGODON',
    '40% LINO',
    'PLANCHA TIBIA',
  ])
})

test('columns of a label that is seen askew lean, and are parted all the same', () => {
  const lean = (one: ReadSlab): ReadSlab => ({
    ...one,
    slab: { ...one.slab, x: one.slab.x + 0.14 * one.slab.y },
  })
  const [makeUp, care] = [
    ['70% WOOL', '30% POLYESTER', '70% LAINE', '30% POLYESTER', '70% VLNA', '30% POLYESTER'],
    ['WASH WITH', 'LIKE COLORS', 'IRON LOW', 'LAVER A', 'LA MACHINE', 'FER DOUX', 'PRAT NA 30'],
  ]
  const read = [
    ...makeUp!.map((text, row) => lean(at(0, row, text))),
    ...care!.map((text, row) => lean(at(112, row, text))),
  ]
  expect(texts(read)).toEqual([...makeUp!, ...care!])
})

test('a column of shares stays beside its names', () => {
  const read = [
    ...['COTTON', 'POLYESTER', 'ELASTANE'].map((text, row) => at(0, row, text)),
    ...['60%', '37%', '3%'].map((text, row) => at(140, row, text)),
  ]
  expect(texts(read)).toEqual(['COTTON 60%', 'POLYESTER 37%', 'ELASTANE 3%'])
})

test('words one under another are no line, though they hardly lie apart', () => {
  const one = at(0, 0, 'COTTON')
  const other = { ...at(0, 0, 'LINEN'), slab: { ...one.slab, y: one.slab.y + 5 } }
  expect(texts([one, other])).toEqual(['COTTON', 'LINEN'])
})

test('of nothing there is nothing to read', () => {
  expect(inOrder([])).toEqual([])
})

test('shares in a column of their own stay with their names, be these long, and not with the phrases beside', () => {
  const names = ['VIRGIN WOOL', 'ELASTANE', 'LANA DI TOSA', 'ELASTANO', 'REN, NY ULD', 'ELASTANE']
  const phrases = [
    'HAND WASH ONLY',
    'NEVER IRON',
    'DO NOT BLEACH',
    'DRY FLAT',
    'LAVARE A MANO',
    'PERU',
  ]
  const read = names.flatMap((name, row) => [
    at(0, row, name),
    at(120, row, row % 2 === 0 ? '98%' : '2%'),
    at(180, row, phrases[row]!),
  ])
  expect(texts(read)).toEqual([
    ...names.map((name, row) => `${name} ${row % 2 === 0 ? '98%' : '2%'}`),
    ...phrases,
  ])
})
