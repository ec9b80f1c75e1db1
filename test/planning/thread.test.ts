import { afterEach, expect, test, vi } from 'vitest'
import { openThread, type Thread } from '../../src/planning/thread.ts'

let thread: Thread<object, unknown>
afterEach(() => thread.close())

const stand = (name: string) => new URL(`../help/planning/${name}.mjs`, import.meta.url)
const run = () => thread.run({}, 60_000, () => {})

test('a thread that ended with nothing to do starts again with the next job', async () => {
  thread = openThread(stand('leaves'))
  expect(await run()).toBeNull()
  // Posted to a thread that is no more, a job would wait for its whole time.
  await vi.waitFor(async () => expect(await run()).toBeNull(), 20_000)
})

test('a thread that ends as soon as it is ready costs its job and nothing more', async () => {
  thread = openThread(stand('ends'))
  for (let n = 0; n < 3; n++) expect(await run()).toBe('the thread ended')
})

test('a thread whose file is not there says so, and so does one that is closed', async () => {
  thread = openThread(stand('nowhere'))
  expect(await run()).toMatch(/nowhere/)
  expect(await run()).toMatch(/nowhere/)
  await thread.close()
  expect(await run()).toMatch(/closed/)
})
