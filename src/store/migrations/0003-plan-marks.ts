import type { Migration } from 'kysely'

export const planMarks: Migration = {
  async up(db) {
    await db.schema
      .createTable('plan_mark')
      .addColumn('id', 'text', (c) => c.primaryKey())
      .addColumn('pile_id', 'text', (c) => c.notNull().references('pile.id').onDelete('cascade'))
      .addColumn('kind', 'text', (c) => c.notNull())
      .addColumn('garment', 'integer')
      .addColumn('body', 'text', (c) => c.notNull())
      .addColumn('who', 'text', (c) => c.notNull().references('account.id'))
      .addColumn('at', 'bigint', (c) => c.notNull())
      .addColumn('undone_at', 'bigint')
      .addColumn('undone_by', 'text', (c) => c.references('account.id'))
      .execute()
    for (const column of ['pile_id', 'who', 'undone_by']) {
      await db.schema.createIndex(`plan_mark_by_${column}`).on('plan_mark').column(column).execute()
    }
  },
}
