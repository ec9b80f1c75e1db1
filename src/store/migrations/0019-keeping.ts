import type { Migration } from 'kysely'

/** Nothing was erased before it was written down. */
export const keeping: Migration = {
  async up(db) {
    await db.schema
      .createTable('erasure')
      .addColumn('what_hash', 'text', (c) => c.primaryKey())
      .addColumn('what', 'text', (c) => c.notNull())
      .addColumn('by_whom', 'text', (c) => c.notNull())
      .addColumn('at', 'bigint', (c) => c.notNull())
      .execute()
    await db.schema
      .createTable('photo_removal')
      .addColumn('hash', 'text', (c) => c.primaryKey())
      .addColumn('since', 'bigint', (c) => c.notNull())
      .execute()
    await db.schema
      .createTable('unfinished')
      .addColumn('work', 'text', (c) => c.primaryKey())
      .addColumn('since', 'bigint', (c) => c.notNull())
      .execute()
  },
}
