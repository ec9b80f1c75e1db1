import { type Kysely, type Migration, SqliteAdapter, sql } from 'kysely'

/**
 * An answer writes fewer pages. The index by `changed_at` moved with every answer, and on PostgreSQL all others of the
 * pile with it (postgresql.org/docs/current/storage-hot.html); those few who look for what was left alone read the
 * open piles. In a file, acts lie in the order of their key (sqlite.org/withoutrowid.html), which is one tree less.
 */
export const fewerPages: Migration = {
  async up(db) {
    await db.schema.dropIndex('pile_by_status_changed_at').execute()
    if (db.getExecutor().adapter instanceof SqliteAdapter) await actsByKey(db)
  },
}

async function actsByKey(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('act_by_key')
    .addColumn('pile_id', 'text', (c) => c.notNull().references('pile.id').onDelete('cascade'))
    .addColumn('seq', 'integer', (c) => c.notNull())
    .addColumn('idem', 'text', (c) => c.notNull())
    .addColumn('who', 'text', (c) => c.notNull())
    .addColumn('act', 'text', (c) => c.notNull())
    .addColumn('at', 'bigint', (c) => c.notNull())
    .addPrimaryKeyConstraint('act_pk', ['pile_id', 'seq'])
    .addUniqueConstraint('act_once', ['pile_id', 'idem'])
    .modifyEnd(sql`without rowid`)
    .execute()
  await sql`insert into act_by_key (pile_id, seq, idem, who, act, at)
    select pile_id, seq, idem, who, act, at from act order by pile_id, seq`.execute(db)
  await db.schema.dropTable('act').execute()
  await db.schema.alterTable('act_by_key').renameTo('act').execute()
}
