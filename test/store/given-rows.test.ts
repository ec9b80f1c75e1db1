import { sql } from 'kysely'
import { expect, test } from 'vitest'
import { type WrittenInto, writing } from '../../src/store/given-rows.ts'
import { eachStore } from '../help/stores.ts'

const counts = {
  table: 'use_count',
  columns: { what: 'text', until_at: 'bigint', uses: 'bigint' },
  key: ['what', 'until_at'],
} as const satisfies WrittenInto<'use_count'>

const write = writing(counts)

eachStore('rows that a statement is given', (store) => {
  const kept = () => store().db.selectFrom('use_count').selectAll().orderBy('what').execute()

  test('are kept as they are, whether one comes or several', async () => {
    const { db } = store()
    const row = (what: string, uses: number) => ({ what, until_at: 1_796_000_000_000, uses })
    // Words that would end a text or a document that was put together by hand.
    const rows = [`'quoted' "twice"`, '{"a": [1]}\\', 'ñandú — 布', '?1 $1 :a'].map(row)
    await db.executeQuery(write(db, rows.slice(0, 1)))
    await db.executeQuery(write(db, rows.slice(1)))
    const inOrder = (some: typeof rows) => some.toSorted((a, b) => (a.what < b.what ? -1 : 1))
    expect(inOrder(await kept())).toEqual(inOrder(rows))

    await db.executeQuery(write(db, [row('ñandú — 布', 41)]))
    const [first, second] = rows.map(({ what }) => row(what, 42))
    await db.executeQuery(write(db, [first!, second!]))
    const uses = new Map((await kept()).map(({ what, uses: n }) => [what, n]))
    expect([...uses.values()].sort()).toEqual([3, 41, 42, 42])
  })

  test('hold whole numbers as such', async () => {
    const { db, dialect } = store()
    if (dialect === 'postgres') return
    await db.executeQuery(write(db, [{ what: 'one', until_at: 5, uses: 7 }]))
    await db.executeQuery(
      write(db, [
        { what: 'two', until_at: 5, uses: 7 },
        { what: 'three', until_at: 5, uses: 7 },
      ]),
    )
    const { rows } = await sql<{
      kind: string
    }>`select typeof(uses) as kind from use_count`.execute(db)
    expect(new Set(rows.map(({ kind }) => kind))).toEqual(new Set(['integer']))
  })
})
