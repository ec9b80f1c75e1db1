import type { Migration } from 'kysely'

/** Of piles that are there already nothing was laid out. */
export const laidOut: Migration = {
  async up(db) {
    await db.schema
      .createTable('laid_out')
      .addColumn('pile_id', 'text', (c) => c.primaryKey().references('pile.id').onDelete('cascade'))
      .addColumn('state', 'text', (c) => c.notNull())
      .addColumn('since', 'bigint', (c) => c.notNull())
      .execute()
  },
}
