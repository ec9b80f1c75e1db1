import type { Migration } from 'kysely'

export const custody: Migration = {
  async up(db) {
    await db.schema
      .createTable('fact_set')
      .addColumn('id', 'text', (c) => c.primaryKey())
      .addColumn('pile_id', 'text', (c) => c.notNull().references('pile.id').onDelete('cascade'))
      .addColumn('item', 'integer', (c) => c.notNull())
      .addColumn('fact', 'text', (c) => c.notNull())
      .addColumn('value', 'text', (c) => c.notNull())
      .addColumn('source', 'text', (c) => c.notNull())
      .addColumn('reason', 'text', (c) => c.notNull())
      .addColumn('who', 'text', (c) => c.notNull().references('account.id'))
      .addColumn('at', 'bigint', (c) => c.notNull())
      .addColumn('undone_at', 'bigint')
      .addColumn('undone_by', 'text', (c) => c.references('account.id'))
      .execute()
    for (const column of ['pile_id', 'who', 'undone_by']) {
      await db.schema.createIndex(`fact_set_by_${column}`).on('fact_set').column(column).execute()
    }
  },
}
