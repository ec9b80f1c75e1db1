import { expect, test } from 'vitest'
import { Failure } from '../../src/base/failures.ts'
import { type Early, groupCommit, type Settled } from '../../src/store/group-commit.ts'
import type { Store } from '../../src/store/open.ts'
import type { Db } from '../../src/store/schema.ts'
import { eachStore } from '../help/stores.ts'

const noted = async (trx: Db, ids: readonly string[]): Promise<Settled<string>[]> => {
  for (const hash of ids) {
    await trx.insertInto('photo_removal').values({ hash, since: 1 }).execute()
  }
  return ids.map((value) => ({ value }))
}

const kept = async ({ db }: Store) =>
  (await db.selectFrom('photo_removal').select('hash').orderBy('hash').execute()).map(
    ({ hash }) => hash,
  )

/** The same store, with how many were asked for in each of its transactions. */
function watched(
  store: Store,
  work = noted,
  options: Parameters<typeof groupCommit<string, string>>[2] = {},
) {
  const batches: number[] = []
  const commit = groupCommit(
    store,
    (trx, ids: readonly string[]) => {
      batches.push(ids.length)
      return work(trx, ids)
    },
    options,
  )
  return { batches, commit }
}

const early = (store: Store, done: Early<string, string>) => watched(store, noted, { early: done })

eachStore('what many ask for at once', (store) => {
  test('is written in one transaction, and what comes meanwhile in the next', async () => {
    const { batches, commit } = watched(store())
    const first = ['a', 'b', 'c'].map(commit)
    await new Promise(setImmediate)
    const second = ['d', 'e'].map(commit)
    expect(await Promise.all([...first, ...second])).toEqual(['a', 'b', 'c', 'd', 'e'])
    expect(batches).toEqual([3, 2])
    expect(await kept(store())).toEqual(['a', 'b', 'c', 'd', 'e'])
  })

  test('is kept when it resolves', async () => {
    const { commit } = watched(store())
    const seen = await Promise.all(
      ['a', 'b'].map((id) => commit(id).then(async () => (await kept(store())).includes(id))),
    )
    expect(seen).toEqual([true, true])
  })

  test('fails for whom it is refused, and for nobody else', async () => {
    const { batches, commit } = watched(store(), async (trx, ids) => {
      await noted(
        trx,
        ids.filter((id) => id !== 'no'),
      )
      return ids.map((id) => (id === 'no' ? { error: new Failure('not_found') } : { value: id }))
    })
    const [a, no, b] = await Promise.allSettled(['a', 'no', 'b'].map(commit))
    expect([a, b]).toMatchObject([{ value: 'a' }, { value: 'b' }])
    expect(no).toMatchObject({ reason: { code: 'not_found' } })
    expect(batches).toEqual([3])
    expect(await kept(store())).toEqual(['a', 'b'])
  })

  test('is tried one by one where the store refuses them together', async () => {
    const { batches, commit } = watched(store())
    await Promise.all(['b', 'd'].map(commit))
    // The second b breaks the primary key, and with it the whole transaction.
    const [a, again, c] = await Promise.allSettled(['a', 'b', 'c'].map(commit))
    expect([a, c]).toMatchObject([{ value: 'a' }, { value: 'c' }])
    expect(again).toMatchObject({ status: 'rejected' })
    expect(batches).toEqual([2, 3, 1, 1, 1])
    expect(await kept(store())).toEqual(['a', 'b', 'c', 'd'])
  })

  test('is not tried again where the store is away', async () => {
    const { batches, commit } = watched(store(), () =>
      Promise.reject(new Failure('store_unavailable')),
    )
    const all = await Promise.allSettled(['a', 'b'].map(commit))
    expect(all).toMatchObject(
      ['a', 'b'].map(() => ({ status: 'rejected', reason: { code: 'store_unavailable' } })),
    )
    expect(batches).toEqual([2])
  })

  test('behind one who came alone waits for nothing where a server writes, and is together again', async () => {
    const { batches, commit } = watched(store())
    for (const together of [['a'], ['b', 'c', 'd'], ['e', 'f']]) {
      await Promise.all(together.map(commit))
      await new Promise(setImmediate)
    }
    expect(batches).toEqual(store().dialect === 'postgres' ? [1, 1, 2, 2] : [1, 3, 2])
    expect(await kept(store())).toEqual(['a', 'b', 'c', 'd', 'e', 'f'])
  })

  test('is no more than so many in one transaction', async () => {
    const { batches, commit } = watched(store(), noted, { most: 2 })
    await Promise.all(['a', 'b', 'c', 'd', 'e'].map(commit))
    expect(batches).toEqual([2, 2, 1])
  })

  test('goes on behind a transaction that failed, with what came meanwhile', async () => {
    let fails = true
    const { batches, commit } = watched(store(), (trx, ids) => {
      if (!fails) return noted(trx, ids)
      fails = false
      return Promise.reject(new Failure('store_unavailable'))
    })
    const first = Promise.allSettled(['a', 'b'].map(commit))
    await new Promise(setImmediate)
    const second = commit('c')
    expect(await first).toMatchObject([
      { reason: { code: 'store_unavailable' } },
      { reason: { code: 'store_unavailable' } },
    ])
    expect(await second).toBe('c')
    // Whoever was put off sends the same again.
    expect(await Promise.all(['a', 'b'].map(commit))).toEqual(['a', 'b'])
    expect(batches).toEqual([2, 1, 2])
    expect(await kept(store())).toEqual(['a', 'b', 'c'])
  })

  test('fails alone where it fails in a transaction of its own too, whatever the fault', async () => {
    const fault = new Error('unforeseen')
    const { batches, commit } = watched(store(), async (trx, ids) => {
      const settled = await noted(trx, ids)
      if (ids.includes('no')) throw fault
      return settled
    })
    const settled = await Promise.allSettled(['a', 'no', 'b'].map(commit))
    expect(settled).toMatchObject([{ value: 'a' }, { reason: fault }, { value: 'b' }])
    expect(batches).toEqual([3, 1, 1, 1])
    expect(await kept(store())).toEqual(['a', 'b'])
  })

  test('is done early where that can be, and the rest in one transaction', async () => {
    const { batches, commit } = early(store(), async (ids) =>
      ids.map((id) => (id === 'b' ? null : `${id} early`)),
    )
    expect(await Promise.all(['a', 'b', 'c'].map(commit))).toEqual(['a early', 'b', 'c early'])
    expect(await Promise.all(['d', 'e'].map(commit))).toEqual(['d early', 'e early'])
    expect(batches).toEqual([1])
    expect(await kept(store())).toEqual(['b'])
  })

  test('goes into a transaction where doing it early fails, but not where the store is away', async () => {
    const failing = early(store(), () => Promise.reject(new Error('unforeseen')))
    expect(await Promise.all(['a', 'b'].map(failing.commit))).toEqual(['a', 'b'])
    expect(failing.batches).toEqual([2])

    const away = early(store(), () => Promise.reject(new Failure('store_unavailable')))
    expect(await Promise.allSettled(['c', 'd'].map(away.commit))).toMatchObject(
      ['c', 'd'].map(() => ({ reason: { code: 'store_unavailable' } })),
    )
    expect(away.batches).toEqual([])
    expect(await kept(store())).toEqual(['a', 'b'])
  })
})
