import { expect, test } from 'vitest'
import { migrate } from '../../src/store/migrate.ts'
import type { StoreSettings } from '../../src/store/open.ts'
import { startChild } from '../help/child.ts'
import { takeNumbers } from '../help/rows.ts'
import { eachBareStore } from '../help/stores.ts'

async function numbersOf(settings: StoreSettings, count: number): Promise<number[]> {
  const child = startChild('test/help/numbering.ts', [JSON.stringify(settings), String(count)])
  const { stdout, stderr } = await child.ended()
  expect(stderr).toBe('')
  return JSON.parse(stdout)
}

eachBareStore('processes side by side', (open) => {
  test('write at once, and none undoes or repeats what another did', async () => {
    const one = await open()
    await migrate(one.store)
    const take = (count: number) =>
      // PGlite lives in one process, so there this one asks three times at once.
      one.settings ? numbersOf(one.settings, count) : takeNumbers(one.store, count)
    const taken = (await Promise.all([take(100), take(100), take(100)])).flat()
    expect(taken.sort((a, b) => a - b)).toEqual(Array.from({ length: 300 }, (_, n) => n + 1))
  })
})
