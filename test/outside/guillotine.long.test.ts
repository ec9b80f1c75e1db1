import { expect, test } from 'vitest'
import { limited } from '../help/plates.ts'

test.each(['cgcut2', 'cgcut3'])(
  '%s, whose copies are limited, is cut to its published optimum',
  (name) => {
    const { most, published } = limited(name, false)
    expect(most).toBe(published)
  },
  120_000,
)
