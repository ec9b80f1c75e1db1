import { type CompiledQuery, sql } from 'kysely'
import { expect, test } from 'vitest'
import { parcelsOf } from '../../src/desk/parcels.ts'
import { milestonesOf } from '../../src/intake/milestones.ts'
import { receivedFor } from '../../src/intake/photos.ts'
import { columnsIn, tablesIn } from '../../src/store/contents.ts'
import { lastingTables, type TableFacts, tableNames, tables } from '../../src/store/tables.ts'
import { fillEveryTable } from '../help/every-table.ts'
import { eachStore, oneStore } from '../help/stores.ts'

eachStore('the list of tables', (store) => {
  test('names every table that the migrations make, and no other', async () => {
    const there = [...(await tablesIn(store()))].filter((name) => !/^(kysely|sqlite)_/.test(name))
    expect([...tableNames].sort()).toEqual(there.sort())
  })

  test('names those that are referred to first', async () => {
    // The store refuses a row that refers to one that is not there.
    await fillEveryTable(store())
    for (const name of tableNames) {
      expect(await store().db.selectFrom(name).selectAll().execute()).toHaveLength(1)
    }
  })

  test('tells by which columns a row is named', async () => {
    await fillEveryTable(store())
    for (const name of tableNames) {
      const { key }: TableFacts = tables[name]
      expect(await columnsIn(store(), name), name).toEqual(expect.arrayContaining([...key]))
      const row = await store().db.selectFrom(name).selectAll().executeTakeFirstOrThrow()
      const again = store()
        .db.insertInto(name)
        .values(row as never)
        .execute()
      await expect(again, name).rejects.toThrow()
    }
  })

  test('gives a pile whatever names one, so that it is erased with it', async () => {
    await fillEveryTable(store())
    const ofPiles = tableNames.filter((name) => tables[name].of === 'pile')
    for (const name of tableNames) {
      const columns = await columnsIn(store(), name)
      const named = columns.includes('pile_id') || name === 'pile'
      expect(ofPiles.includes(name), name).toBe(named)
    }
    await store().db.deleteFrom('pile').execute()
    for (const name of ofPiles) {
      expect(await store().db.selectFrom(name).selectAll().execute(), name).toEqual([])
    }
  })

  test('leaves at home what belongs to one store alone', () => {
    const left = tableNames.filter((name) => !lastingTables.includes(name))
    expect(left).toEqual(['session', 'once_link', 'photo_removal', 'unfinished', 'use_count'])
  })
})

eachStore('what an answer changes of its pile', (store, name) => {
  // A row whose indexed columns stay is changed in its page alone (postgresql.org/docs/current/storage-hot.html).
  test('has no index', async () => {
    const texts =
      name === 'SQLite'
        ? sql<{ text: string | null }>`select sql as text from sqlite_master
            where type = 'index' and tbl_name = 'pile'`
        : sql<{ text: string }>`select indexdef as text from pg_indexes
            where tablename = 'pile' and schemaname = current_schema()`
    const { rows } = await texts.execute(store().db)
    const indexes = rows.map(({ text }) => text ?? '')
    expect(indexes.some((text) => text.includes('started_at'))).toBe(true)
    expect(indexes.filter((text) => /\b(seq|changed_at)\b/.test(text))).toEqual([])
  })
})

oneStore('SQLite, which counts no rows before it is told to', (store) => {
  /** How it would look up what a statement asks for. */
  async function planOf(asked: CompiledQuery): Promise<string> {
    const { rows } = await store().db.executeQuery<{ detail: string }>({
      ...asked,
      sql: `explain query plan ${asked.sql}`,
    })
    return rows.map(({ detail }) => detail).join('; ')
  }

  test('finds the parcels of a pile by the pile', async () => {
    const { db } = store()
    const asked: CompiledQuery[] = []
    const watched = db.withPlugin({
      transformQuery: ({ node, queryId }) => {
        asked.push(db.getExecutor().compileQuery(node, queryId))
        return node
      },
      transformResult: async ({ result }) => result,
    })
    await milestonesOf(watched, 'p')
    await parcelsOf(watched, 'p')
    const plans = await Promise.all(asked.map(planOf))
    const ofParcels = plans.filter((plan) => plan.includes('custody'))
    expect(ofParcels).toHaveLength(2)
    for (const plan of ofParcels) {
      const lookups = plan.match(/\(.*?\)/g)
      expect(lookups).toEqual(['(pile_id=?)', '(pile_id=? AND subject=?)'])
    }
  })

  test('finds the photos of a question by the question, and drafts by their time', async () => {
    const { db } = store()
    const place = { pileId: 'p', item: 1, question: 'photos' }
    const drafts = receivedFor(db, place).select('id').where('kept', '=', 0).orderBy('at')
    expect(await planOf(drafts.compile())).toContain('(pile_id=? AND item=? AND question=?)')
    const old = db
      .selectFrom('photo')
      .select('id')
      .where('kept', '=', sql.lit(0))
      .where('at', '<', 1)
    expect(await planOf(old.compile())).toContain('photo_drafts_by_at (at<?)')
  })
})
