import { expect, test } from 'vitest'
import { fuzz } from '../prove/fuzz.ts'

test('whatever is sent is answered, and with no fault of ours', async () => {
  const { faults, requests, statuses } = await fuzz(1_500, 20_260_603)
  expect(faults).toEqual([])
  expect(requests).toBe(1_500)
  // Some of it came through: pages that are shown, and forms that are taken.
  expect(statuses[200]).toBeGreaterThan(50)
  expect(statuses[303]).toBeGreaterThan(20)
}, 400_000)
