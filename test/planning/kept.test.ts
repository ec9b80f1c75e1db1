import { expect, test } from 'vitest'
import { Kept } from '../../src/planning/kept.ts'

const keysIn = <T>(kept: Kept<T>, keys: string): string =>
  [...keys].filter((key) => kept.look(key) !== undefined).join('')

test('what was asked for longest ago goes first, by number', () => {
  const kept = new Kept<number>(3)
  for (const [n, key] of [...'abc'].entries()) kept.set(key, n)
  kept.get('a')
  kept.look('b')
  kept.set('d', 3)
  expect(keysIn(kept, 'abcd')).toBe('acd')
  expect(kept.size).toBe(3)
})

test('and by what it takes, however few', () => {
  const kept = new Kept<string>(100, 10, (text) => text.length)
  kept.set('a', 'four')
  kept.set('b', 'four')
  kept.set('b', 'sixsix')
  expect(keysIn(kept, 'ab')).toBe('ab')
  kept.set('c', 'x')
  expect(keysIn(kept, 'abc')).toBe('bc')
  kept.set('d', 'more than there is room for')
  expect(kept.size).toBe(0)
  kept.set('e', 'tenletters')
  expect(keysIn(kept, 'e')).toBe('e')
  kept.delete('e')
  kept.delete('e')
  kept.set('f', 'tenletters')
  expect(keysIn(kept, 'f')).toBe('f')
})
