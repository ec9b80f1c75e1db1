import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { readShop } from '../../src/intake/shop.ts'
import { learnAt } from '../help/app.ts'

const guide = readFileSync(new URL('../../DEVELOPERS.md', import.meta.url), 'utf8')

/** Settings and days as the developers' guide tells them. */
const told = Object.fromEntries(
  [...guide.matchAll(/^\|[^|]+\| `(\w+_days)` +\| (\d+) +\|/gm)].map(([, name, days]) => [
    name,
    Number(days),
  ]),
)

test('the guide tells for how long everything is kept, as the shop comes and as it stands without a word', () => {
  const { shop } = learnAt('2026-06-01')
  expect(told).toEqual(shop.keeping)
  const { keeping: _, ...silent } = shop
  expect(readShop(silent).keeping).toEqual(shop.keeping)
})

test.each([
  ['no days', { open_days: 0 }],
  ['half a day', { open_days: 0.5 }],
  ['a word it does not know', { whim_days: 3 }],
])('a shop that keeps things for %s is refused', (_, keeping) => {
  const { shop } = learnAt('2026-06-01')
  expect(() => readShop({ ...shop, keeping: { ...shop.keeping, ...keeping } })).toThrow(
    'flows_invalid',
  )
})
