import type { Kysely, Migration } from 'kysely'

const conversation = async (db: Kysely<unknown>) => {
  await db.schema
    .createTable('flow_version')
    .addColumn('hash', 'text', (c) => c.primaryKey())
    .addColumn('body', 'text', (c) => c.notNull())
    .addColumn('first_used_at', 'bigint', (c) => c.notNull())
    .execute()
  await db.schema
    .createTable('counter')
    .addColumn('name', 'text', (c) => c.primaryKey())
    .addColumn('value', 'integer', (c) => c.notNull())
    .execute()
  await db.schema
    .createTable('pile')
    .addColumn('id', 'text', (c) => c.primaryKey())
    .addColumn('number', 'integer', (c) => c.notNull().unique())
    .addColumn('language', 'text', (c) => c.notNull())
    .addColumn('flow_hash', 'text', (c) => c.notNull().references('flow_version.hash'))
    .addColumn('status', 'text', (c) => c.notNull())
    .addColumn('seq', 'integer', (c) => c.notNull())
    .addColumn('started_at', 'bigint', (c) => c.notNull())
    .addColumn('changed_at', 'bigint', (c) => c.notNull())
    .addColumn('confirmed_at', 'bigint')
    .execute()
  await db.schema
    .createTable('pile_link')
    .addColumn('key_hash', 'text', (c) => c.primaryKey())
    .addColumn('pile_id', 'text', (c) => c.notNull().references('pile.id').onDelete('cascade'))
    .addColumn('made_at', 'bigint', (c) => c.notNull())
    .addColumn('expires_at', 'bigint', (c) => c.notNull())
    .addColumn('revoked_at', 'bigint')
    .execute()
  await db.schema
    .createTable('act')
    .addColumn('pile_id', 'text', (c) => c.notNull().references('pile.id').onDelete('cascade'))
    .addColumn('seq', 'integer', (c) => c.notNull())
    .addColumn('idem', 'text', (c) => c.notNull())
    .addColumn('who', 'text', (c) => c.notNull())
    .addColumn('act', 'text', (c) => c.notNull())
    .addColumn('at', 'bigint', (c) => c.notNull())
    .addPrimaryKeyConstraint('act_pk', ['pile_id', 'seq'])
    .addUniqueConstraint('act_once', ['pile_id', 'idem'])
    .execute()
}

const derived = async (db: Kysely<unknown>) => {
  await db.schema
    .createTable('standing')
    .addColumn('pile_id', 'text', (c) => c.primaryKey().references('pile.id').onDelete('cascade'))
    .addColumn('seq', 'integer', (c) => c.notNull())
    .addColumn('place', 'text', (c) => c.notNull())
    .addColumn('tally', 'text', (c) => c.notNull())
    .addColumn('summary', 'text', (c) => c.notNull())
    .addColumn('garments', 'integer', (c) => c.notNull())
    .addColumn('needs_eyes', 'integer', (c) => c.notNull())
    .addColumn('contact_name', 'text')
    .addColumn('need_by', 'bigint')
    .execute()
  await db.schema
    .createTable('garment')
    .addColumn('pile_id', 'text', (c) => c.notNull().references('pile.id').onDelete('cascade'))
    .addColumn('item', 'integer', (c) => c.notNull())
    .addColumn('tag', 'text', (c) => c.notNull())
    .addColumn('name', 'text', (c) => c.notNull())
    .addColumn('kind', 'text', (c) => c.notNull())
    .addColumn('grade', 'text')
    .addColumn('flags', 'text', (c) => c.notNull())
    .addColumn('facts', 'text', (c) => c.notNull())
    .addColumn('dropped', 'integer', (c) => c.notNull())
    .addPrimaryKeyConstraint('garment_pk', ['pile_id', 'item'])
    .execute()
  await db.schema
    .createTable('agreed')
    .addColumn('pile_id', 'text', (c) => c.notNull().references('pile.id').onDelete('cascade'))
    .addColumn('version', 'integer', (c) => c.notNull())
    .addColumn('kind', 'text', (c) => c.notNull())
    .addColumn('body', 'text', (c) => c.notNull())
    .addColumn('at', 'bigint', (c) => c.notNull())
    .addPrimaryKeyConstraint('agreed_pk', ['pile_id', 'version'])
    .execute()
}

const people = async (db: Kysely<unknown>) => {
  await db.schema
    .createTable('account')
    .addColumn('id', 'text', (c) => c.primaryKey())
    .addColumn('email', 'text', (c) => c.notNull().unique())
    .addColumn('name', 'text', (c) => c.notNull())
    .addColumn('role', 'text', (c) => c.notNull())
    .addColumn('password_hash', 'text', (c) => c.notNull())
    .addColumn('made_at', 'bigint', (c) => c.notNull())
    .addColumn('disabled_at', 'bigint')
    .execute()
  await db.schema
    .createTable('session')
    .addColumn('token_hash', 'text', (c) => c.primaryKey())
    .addColumn('account_id', 'text', (c) =>
      c.notNull().references('account.id').onDelete('cascade'),
    )
    .addColumn('csrf', 'text', (c) => c.notNull())
    .addColumn('made_at', 'bigint', (c) => c.notNull())
    .addColumn('seen_at', 'bigint', (c) => c.notNull())
    .addColumn('expires_at', 'bigint', (c) => c.notNull())
    .execute()
  await db.schema
    .createTable('once_link')
    .addColumn('token_hash', 'text', (c) => c.primaryKey())
    .addColumn('purpose', 'text', (c) => c.notNull())
    .addColumn('account_id', 'text', (c) => c.references('account.id').onDelete('cascade'))
    .addColumn('made_at', 'bigint', (c) => c.notNull())
    .addColumn('expires_at', 'bigint', (c) => c.notNull())
    .addColumn('used_at', 'bigint')
    .execute()
}

const attached = async (db: Kysely<unknown>) => {
  await db.schema
    .createTable('note')
    .addColumn('id', 'text', (c) => c.primaryKey())
    .addColumn('pile_id', 'text', (c) => c.notNull().references('pile.id').onDelete('cascade'))
    .addColumn('item', 'integer', (c) => c.notNull())
    .addColumn('question', 'text', (c) => c.notNull())
    .addColumn('text', 'text', (c) => c.notNull())
    .addColumn('at', 'bigint', (c) => c.notNull())
    .addColumn('settled_at', 'bigint')
    .addColumn('settled_by', 'text', (c) => c.references('account.id'))
    .execute()
  await db.schema
    .createTable('photo')
    .addColumn('id', 'text', (c) => c.primaryKey())
    .addColumn('pile_id', 'text', (c) => c.notNull().references('pile.id').onDelete('cascade'))
    .addColumn('item', 'integer')
    .addColumn('question', 'text')
    .addColumn('hash', 'text', (c) => c.notNull())
    .addColumn('width', 'integer', (c) => c.notNull())
    .addColumn('height', 'integer', (c) => c.notNull())
    .addColumn('bytes', 'integer', (c) => c.notNull())
    .addColumn('kept', 'integer', (c) => c.notNull())
    .addColumn('at', 'bigint', (c) => c.notNull())
    .addColumn('removed_at', 'bigint')
    .execute()
  await db.schema
    .createTable('decision')
    .addColumn('id', 'text', (c) => c.primaryKey())
    .addColumn('pile_id', 'text', (c) => c.notNull().references('pile.id').onDelete('cascade'))
    .addColumn('item', 'integer')
    .addColumn('verdict', 'text', (c) => c.notNull())
    .addColumn('reason', 'text', (c) => c.notNull())
    .addColumn('who', 'text', (c) => c.notNull().references('account.id'))
    .addColumn('at', 'bigint', (c) => c.notNull())
    .execute()
}

/** Every way rows are looked up that no primary key or unique column serves. */
const indexes: readonly [table: string, columns: string[]][] = [
  ['pile', ['status', 'confirmed_at']], // the desk's queue
  ['pile', ['flow_hash']],
  ['pile_link', ['pile_id']],
  ['garment', ['tag']],
  ['note', ['pile_id']],
  ['note', ['settled_at']],
  ['note', ['settled_by']],
  ['photo', ['pile_id']],
  ['photo', ['hash']],
  ['photo', ['kept', 'at']], // drafts left behind
  ['session', ['account_id']],
  ['session', ['expires_at']],
  ['once_link', ['account_id']],
  ['decision', ['pile_id']],
  ['decision', ['who']],
]

export const intakeAndDesk: Migration = {
  async up(db) {
    await conversation(db)
    await derived(db)
    await people(db)
    await attached(db)
    for (const [table, columns] of indexes) {
      await db.schema
        .createIndex(`${table}_by_${columns.join('_')}`)
        .on(table)
        .columns(columns)
        .execute()
    }
  },
}
