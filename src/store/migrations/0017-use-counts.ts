import type { Migration } from 'kysely'

/** How often something was done in one window of time; rows go once it has ended. */
export const useCounts: Migration = {
  async up(db) {
    await db.schema
      .createTable('use_count')
      .addColumn('what', 'text', (c) => c.notNull())
      .addColumn('until_at', 'bigint', (c) => c.notNull())
      .addColumn('uses', 'integer', (c) => c.notNull())
      .addPrimaryKeyConstraint('use_count_pk', ['what', 'until_at'])
      .execute()
    await db.schema
      .createIndex('use_count_by_until_at')
      .on('use_count')
      .column('until_at')
      .execute()
  },
}
