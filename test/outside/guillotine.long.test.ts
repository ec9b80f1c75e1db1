import { expect, test } from 'vitest'
import { limited } from '../help/plates.ts'

test('cgcut2, whose copies are limited, is cut to its published optimum', () => {
  const { most, published } = limited('cgcut2', false)
  expect(most).toBe(published)
}, 120_000)
