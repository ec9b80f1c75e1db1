import { expect, test } from 'vitest'
import { shortageWords } from '../../src/papers/shortage-words.ts'
import type { Idle, Shortage } from '../../src/quilt/plan/shortage.ts'
import { language, readPageWords } from '../../src/words/words.ts'

const words = readPageWords()
const say = (shortage: Partial<Shortage>, code = 'en') =>
  shortageWords(
    { wanted: 40, garments: 3, roles: [], lacking: [], idle: [], ...shortage },
    language(code, words.get(code)!),
  )

const short = (pieces: number, length: number, byGarments = true) => ({
  role: 'background',
  quilt: null,
  pieces,
  length,
  byGarments,
})

const idle = (why: Idle) => ({ garment: 'T1', why, least: 4, missed: 2 })

// A yard is 36 in, so 144 quarter inches.
test.each([
  [2, 108, '2 more background pieces, or 3/4 yd of cloth.'],
  [1, 36, '1 more background piece, or 1/4 yd of cloth.'],
  [30, 180, '30 more background pieces, or 1 1/4 yd of cloth.'],
  [30, 288, '30 more background pieces, or 2 yd of cloth.'],
  [30, 50, '30 more background pieces, or 0.35 yd of cloth.'],
])('%i pieces or %i quarter inches', (pieces, length, sentence) => {
  expect(say({ roles: [short(pieces, length)] })).toBe(sentence)
})

test('a role that is meant to be bought is no shortage', () => {
  expect(say({ roles: [short(9, 72, false)] })).toBe(
    'The garments give every piece that is asked of them. 1/2 yd of cloth for 9 background pieces.',
  )
})

test.each([
  [{}, 'The garments give every piece that is asked of them.'],
  [{ wanted: 0 }, 'No pieces are wanted yet. Choose a layout and a size first.'],
  [{ garments: 0, roles: [short(4, 36)] }, /^There are no garments yet/],
  [
    { lacking: [{ role: 'focal', quilt: null, pieces: 2, w: 200, h: 180 }] },
    /^2 focal pieces of 50 by 45 in are/,
  ],
  [
    { roles: [{ ...short(2, 108), quilt: 1 }] },
    'Quilt 2: 2 more background pieces, or 3/4 yd of cloth.',
  ],
  [{ idle: [idle('no-role')] }, /T1 must be used, and no role/],
  [{ idle: [idle('not-in-all')] }, /T1 must be in every quilt, and it is missing from 2 quilts/],
  [{ idle: [idle('no-piece')] }, /none of its panels is large enough/],
  [{ idle: [idle('too-few')] }, /cannot give 4 pieces/],
  [{ idle: [idle('no-room')] }, /leave no room for it/],
] as [Partial<Shortage>, string | RegExp][])('%j has its sentence', (shortage, sentence) => {
  expect(say(shortage)).toMatch(sentence)
  expect(say(shortage, 'es')).not.toBe(say(shortage))
})

test('no sentence says that there is no plan', () => {
  for (const code of ['en', 'es']) {
    for (const [key, text] of words.get(code)!) {
      if (key.startsWith('shortage.')) expect(text).not.toMatch(/infeasib|imposib|impossib/i)
    }
  }
})
