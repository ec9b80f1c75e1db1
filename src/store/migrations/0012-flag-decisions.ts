import type { Migration } from 'kysely'

export const flagDecisions: Migration = {
  async up(db) {
    await db.schema
      .createTable('flag_decision')
      .addColumn('id', 'text', (c) => c.primaryKey())
      .addColumn('pile_id', 'text', (c) => c.notNull().references('pile.id').onDelete('cascade'))
      .addColumn('item', 'integer', (c) => c.notNull())
      .addColumn('flag', 'text', (c) => c.notNull())
      .addColumn('verdict', 'text', (c) => c.notNull())
      .addColumn('reason', 'text', (c) => c.notNull())
      .addColumn('who', 'text', (c) => c.notNull().references('account.id'))
      .addColumn('at', 'bigint', (c) => c.notNull())
      .execute()
    for (const column of ['pile_id', 'who']) {
      await db.schema
        .createIndex(`flag_decision_by_${column}`)
        .on('flag_decision')
        .column(column)
        .execute()
    }
  },
}
