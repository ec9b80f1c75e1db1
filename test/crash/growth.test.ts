import { expect, test } from 'vitest'
import { growthIn, lowest } from '../prove/growth.ts'

const readings = (of: (n: number) => number) => Array.from({ length: 100 }, (_, n) => of(n))

test('what a process holds is flat where it goes up and down, and where it only grows at the start', () => {
  expect(growthIn(readings((n) => 300 + 80 * (n % 7)))).toMatchObject({ grew: false })
  expect(growthIn(readings((n) => 100 + 300 * Math.min(1, n / 20)))).toEqual({
    early: 400,
    late: 400,
    grew: false,
  })
})

test('what goes on growing is seen under the ups and downs, once the run is long enough to tell', () => {
  const leaking = (n: number) => 300 + 80 * (n % 7) + 2 * n
  expect(growthIn(readings(leaking))).toMatchObject({ grew: true })
  expect(growthIn(readings(leaking).slice(0, 40))).toMatchObject({ grew: false })
})

test('what collections leave is the same however high the heap rises between them, and grows where that does', () => {
  const saw = (left: (n: number) => number) => readings((n) => left(n) + 20 * (n % 10))
  expect(lowest(saw(() => 50)).every((one) => one === 50)).toBe(true)
  expect(growthIn(lowest(saw((n) => 50 + n)))).toMatchObject({ grew: true })
})
