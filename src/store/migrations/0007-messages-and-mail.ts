import type { Kysely, Migration } from 'kysely'

const mails = async (db: Kysely<unknown>) => {
  await db.schema
    .createTable('mail')
    .addColumn('id', 'text', (c) => c.primaryKey())
    .addColumn('pile_id', 'text', (c) => c.notNull().references('pile.id').onDelete('cascade'))
    .addColumn('once', 'text', (c) => c.notNull())
    .addColumn('template', 'text', (c) => c.notNull())
    .addColumn('language', 'text', (c) => c.notNull())
    .addColumn('to_name', 'text', (c) => c.notNull())
    .addColumn('to_address', 'text', (c) => c.notNull())
    .addColumn('subject', 'text', (c) => c.notNull())
    .addColumn('body', 'text', (c) => c.notNull())
    .addColumn('state', 'text', (c) => c.notNull())
    .addColumn('tries', 'integer', (c) => c.notNull())
    .addColumn('queued_at', 'bigint', (c) => c.notNull())
    .addColumn('tried_since', 'bigint', (c) => c.notNull())
    .addColumn('due_at', 'bigint', (c) => c.notNull())
    .addColumn('lease', 'text')
    .addColumn('done_at', 'bigint')
    .addColumn('trouble', 'text')
    .addColumn('way', 'text')
    .addUniqueConstraint('mail_once', ['pile_id', 'once'])
    .execute()
  await db.schema
    .createTable('reminder_stop')
    .addColumn('pile_id', 'text', (c) => c.primaryKey().references('pile.id').onDelete('cascade'))
    .addColumn('at', 'bigint', (c) => c.notNull())
    .execute()
  // Which mail told a link, so that the link can be taken back with it.
  await db.schema
    .alterTable('pile_link')
    .addColumn('mail_id', 'text', (c) => c.references('mail.id'))
    .execute()
}

const messages = async (db: Kysely<unknown>) => {
  await db.schema
    .createTable('message')
    .addColumn('id', 'text', (c) => c.primaryKey())
    .addColumn('pile_id', 'text', (c) => c.notNull().references('pile.id').onDelete('cascade'))
    .addColumn('item', 'integer')
    .addColumn('account_id', 'text', (c) => c.references('account.id'))
    .addColumn('text', 'text', (c) => c.notNull())
    .addColumn('wants_answer', 'integer', (c) => c.notNull())
    .addColumn('idem', 'text', (c) => c.notNull())
    .addColumn('at', 'bigint', (c) => c.notNull())
    .addColumn('settled_at', 'bigint')
    .addColumn('settled_by', 'text', (c) => c.references('account.id'))
    .addUniqueConstraint('message_once', ['pile_id', 'idem'])
    .execute()
}

/** Every way rows are looked up that no primary key or unique column serves. */
const indexes: readonly [table: string, columns: string[]][] = [
  ['mail', ['state', 'due_at']], // what the sender takes next
  ['mail', ['queued_at']], // the desk's list
  ['pile_link', ['mail_id']],
  ['message', ['pile_id', 'at']],
  ['message', ['settled_at', 'at']], // what waits for an answer
  ['message', ['account_id']],
  ['message', ['settled_by']],
  ['pile', ['status', 'changed_at']], // intakes that are left alone
]

export const messagesAndMail: Migration = {
  async up(db) {
    await mails(db)
    await messages(db)
    for (const [table, columns] of indexes) {
      await db.schema
        .createIndex(`${table}_by_${columns.join('_')}`)
        .on(table)
        .columns(columns)
        .execute()
    }
  },
}
