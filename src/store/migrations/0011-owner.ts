import type { Migration } from 'kysely'

/** When people were last at the desk, drafts of the owner's files, and what counting over a time looks up. */
export const owner: Migration = {
  async up(db) {
    await db.schema.alterTable('account').addColumn('seen_at', 'bigint').execute()
    await db.schema
      .createTable('flow_draft')
      .addColumn('id', 'text', (c) => c.primaryKey())
      .addColumn('who', 'text', (c) => c.notNull().references('account.id'))
      .addColumn('at', 'bigint', (c) => c.notNull())
      .addColumn('files', 'text', (c) => c.notNull())
      .addColumn('state', 'text', (c) => c.notNull())
      .addColumn('report', 'text')
      .addColumn('ended_at', 'bigint')
      .execute()
    await db.schema.createIndex('flow_draft_by_who').on('flow_draft').column('who').execute()
    await db.schema.createIndex('flow_draft_by_at').on('flow_draft').column('at').execute()
    await db.schema.createIndex('pile_by_started_at').on('pile').column('started_at').execute()
  },
}
