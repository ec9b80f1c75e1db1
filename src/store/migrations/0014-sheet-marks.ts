import type { Migration } from 'kysely'

/** Of photos that are there already nobody knows the focal length any more. */
export const sheetMarks: Migration = {
  async up(db) {
    await db.schema.alterTable('photo').addColumn('focal35', 'integer').execute()
    await db.schema
      .createTable('sheet_mark')
      .addColumn('id', 'text', (c) => c.primaryKey())
      .addColumn('pile_id', 'text', (c) => c.notNull().references('pile.id').onDelete('cascade'))
      .addColumn('photo_id', 'text', (c) => c.notNull().references('photo.id').onDelete('cascade'))
      .addColumn('sheet', 'text', (c) => c.notNull())
      .addColumn('corners', 'text', (c) => c.notNull())
      .addColumn('sizes', 'text', (c) => c.notNull())
      .addColumn('who', 'text', (c) => c.references('account.id'))
      .addColumn('at', 'bigint', (c) => c.notNull())
      .addColumn('undone_at', 'bigint')
      .addColumn('undone_by', 'text', (c) => c.references('account.id'))
      .execute()
    for (const column of ['pile_id', 'photo_id', 'who', 'undone_by']) {
      await db.schema
        .createIndex(`sheet_mark_by_${column}`)
        .on('sheet_mark')
        .column(column)
        .execute()
    }
  },
}
