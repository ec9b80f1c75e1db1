import type { Migration } from 'kysely'

export const benchRecords: Migration = {
  async up(db) {
    await db.schema
      .createTable('bench_record')
      .addColumn('pile_id', 'text', (c) => c.notNull().references('pile.id').onDelete('cascade'))
      .addColumn('seq', 'integer', (c) => c.notNull())
      .addColumn('item', 'integer', (c) => c.notNull())
      .addColumn('kind', 'text', (c) => c.notNull())
      .addColumn('body', 'text', (c) => c.notNull())
      .addColumn('note', 'text', (c) => c.notNull())
      .addColumn('photo_id', 'text', (c) => c.references('photo.id'))
      .addColumn('who', 'text', (c) => c.references('account.id'))
      .addColumn('at', 'bigint', (c) => c.notNull())
      .addColumn('undoes', 'integer')
      .addColumn('idem', 'text', (c) => c.notNull())
      .addPrimaryKeyConstraint('bench_record_pk', ['pile_id', 'seq'])
      .addUniqueConstraint('bench_record_once', ['pile_id', 'idem'])
      .execute()
    for (const column of ['photo_id', 'who']) {
      await db.schema
        .createIndex(`bench_record_by_${column}`)
        .on('bench_record')
        .column(column)
        .execute()
    }
  },
}
