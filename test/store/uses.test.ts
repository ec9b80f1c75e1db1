import { expect, test } from 'vitest'
import { clearUses, countUses, windowEnd } from '../../src/store/uses.ts'
import { eachStore } from '../help/stores.ts'

const minute = 60_000
const at = Date.UTC(2026, 5, 1, 9, 0, 30)

eachStore('uses in a window of time', (store) => {
  const count = (what: string, when = at, by = 1) =>
    countUses(store().db, { what, windowMs: minute, at: when, by })

  test('are counted once each, however many count at once', async () => {
    const counted = await Promise.all(Array.from({ length: 40 }, () => count('a')))
    expect(counted.map(({ uses }) => uses).sort((a, b) => a - b)).toEqual(
      Array.from({ length: 40 }, (_, n) => n + 1),
    )
    expect(new Set(counted.map(({ until }) => until))).toEqual(new Set([at + minute / 2]))
    expect((await count('a', at, 5)).uses).toBe(45)
    expect((await count('b')).uses).toBe(1)
  })

  test('begin anew with the next window, and ended ones are forgotten', async () => {
    await count('a')
    const next = at + minute
    expect(await count('a', next)).toEqual({ uses: 1, until: windowEnd(next, minute) })
    await clearUses(store().db, next)
    expect(await store().db.selectFrom('use_count').select('uses').execute()).toEqual([{ uses: 1 }])
    // A clock that is set back counts on in the window it falls into.
    expect((await count('a')).uses).toBe(1)
  })

  test('keep nothing of what was counted but a hash', async () => {
    await count('mail ana@ruiz.example')
    const [row] = await store().db.selectFrom('use_count').selectAll().execute()
    expect(row!.what).toMatch(/^[0-9a-f]{64}$/)
  })
})
