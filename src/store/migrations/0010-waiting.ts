import type { Migration } from 'kysely'

/** For piles that are there already it is filled at the start. */
export const waiting: Migration = {
  async up(db) {
    await db.schema
      .createTable('waiting')
      .addColumn('pile_id', 'text', (c) => c.primaryKey().references('pile.id').onDelete('cascade'))
      .addColumn('number', 'integer', (c) => c.notNull())
      .addColumn('on_whom', 'text', (c) => c.notNull())
      .addColumn('since', 'bigint', (c) => c.notNull())
      .addColumn('eyes', 'integer', (c) => c.notNull())
      .addColumn('questions', 'integer', (c) => c.notNull())
      .addColumn('verdict', 'text')
      .addColumn('need_by', 'bigint')
      .execute()
    await db.schema
      .createIndex('waiting_by_on_whom_since')
      .on('waiting')
      .columns(['on_whom', 'since'])
      .execute()
  },
}
