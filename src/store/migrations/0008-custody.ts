import type { Kysely, Migration } from 'kysely'

type Db = Kysely<unknown>

const indexes = async (db: Db, table: string, columns: readonly string[]): Promise<void> => {
  for (const column of columns) {
    await db.schema.createIndex(`${table}_by_${column}`).on(table).column(column).execute()
  }
}

/** A table whose rows belong to a pile. */
const ofPile = (db: Db, table: string) =>
  db.schema
    .createTable(table)
    .addColumn('pile_id', 'text', (c) => c.notNull().references('pile.id').onDelete('cascade'))

async function factSets(db: Db): Promise<void> {
  await ofPile(db, 'fact_set')
    .addColumn('id', 'text', (c) => c.primaryKey())
    .addColumn('item', 'integer', (c) => c.notNull())
    .addColumn('fact', 'text', (c) => c.notNull())
    .addColumn('value', 'text', (c) => c.notNull())
    .addColumn('source', 'text', (c) => c.notNull())
    .addColumn('reason', 'text', (c) => c.notNull())
    .addColumn('who', 'text', (c) => c.notNull().references('account.id'))
    .addColumn('at', 'bigint', (c) => c.notNull())
    .addColumn('undone_at', 'bigint')
    .addColumn('undone_by', 'text', (c) => c.references('account.id'))
    .execute()
  await indexes(db, 'fact_set', ['pile_id', 'who', 'undone_by'])
}

async function movements(db: Db): Promise<void> {
  await ofPile(db, 'custody_move')
    .addColumn('seq', 'integer', (c) => c.notNull())
    .addColumn('subject', 'text', (c) => c.notNull())
    .addColumn('move', 'text', (c) => c.notNull())
    .addColumn('from_state', 'text')
    .addColumn('to_state', 'text')
    .addColumn('place', 'text')
    .addColumn('via', 'text')
    .addColumn('note', 'text', (c) => c.notNull())
    .addColumn('photo_id', 'text', (c) => c.references('photo.id'))
    .addColumn('who', 'text', (c) => c.references('account.id'))
    .addColumn('at', 'bigint', (c) => c.notNull())
    .addColumn('undoes', 'integer')
    .addColumn('idem', 'text', (c) => c.notNull())
    .addPrimaryKeyConstraint('custody_move_pk', ['pile_id', 'seq'])
    .addUniqueConstraint('custody_move_once', ['pile_id', 'idem'])
    .execute()
  await indexes(db, 'custody_move', ['photo_id', 'who', 'place'])
  await ofPile(db, 'custody')
    .addColumn('subject', 'text', (c) => c.notNull())
    .addColumn('kind', 'text', (c) => c.notNull())
    .addColumn('code', 'text', (c) => c.notNull())
    .addColumn('state', 'text', (c) => c.notNull())
    .addColumn('whereabouts', 'text', (c) => c.notNull())
    .addColumn('place', 'text')
    .addColumn('since', 'bigint', (c) => c.notNull())
    .addColumn('last_seq', 'integer', (c) => c.notNull())
    .addPrimaryKeyConstraint('custody_pk', ['pile_id', 'subject'])
    .execute()
  await indexes(db, 'custody', ['code'])
  await db.schema
    .createIndex('custody_by_where')
    .on('custody')
    .columns(['whereabouts', 'place'])
    .execute()
  await db.schema.createIndex('custody_by_state').on('custody').columns(['kind', 'state']).execute()
}

async function parcelsAndChecks(db: Db): Promise<void> {
  await ofPile(db, 'parcel')
    .addColumn('subject', 'text', (c) => c.notNull())
    .addColumn('carrier', 'text', (c) => c.notNull())
    .addColumn('tracking', 'text', (c) => c.notNull())
    .addColumn('insured', 'bigint')
    .addColumn('posted_at', 'bigint')
    .addColumn('expected_at', 'bigint')
    .addColumn('arrived_at', 'bigint')
    .addColumn('condition', 'text', (c) => c.notNull())
    .addPrimaryKeyConstraint('parcel_pk', ['pile_id', 'subject'])
    .execute()
  await indexes(db, 'parcel', ['expected_at', 'tracking'])
  await ofPile(db, 'box_check')
    .addColumn('id', 'text', (c) => c.primaryKey())
    .addColumn('subject', 'text', (c) => c.notNull())
    .addColumn('result', 'text', (c) => c.notNull())
    .addColumn('differs', 'text', (c) => c.notNull())
    .addColumn('condition', 'text', (c) => c.notNull())
    .addColumn('note', 'text', (c) => c.notNull())
    .addColumn('photos', 'text', (c) => c.notNull())
    .addColumn('who', 'text', (c) => c.notNull().references('account.id'))
    .addColumn('at', 'bigint', (c) => c.notNull())
    .execute()
  await indexes(db, 'box_check', ['pile_id', 'who'])
}

async function signOffAndCounts(db: Db): Promise<void> {
  await ofPile(db, 'sign_off')
    .addColumn('id', 'text', (c) => c.primaryKey())
    .addColumn('leftovers', 'text', (c) => c.notNull())
    .addColumn('note', 'text', (c) => c.notNull())
    .addColumn('who', 'text', (c) => c.notNull().references('account.id'))
    .addColumn('at', 'bigint', (c) => c.notNull())
    .addColumn('undone_at', 'bigint')
    .addColumn('undone_by', 'text', (c) => c.references('account.id'))
    .execute()
  await indexes(db, 'sign_off', ['pile_id', 'who', 'undone_by'])
  await db.schema
    .createTable('day_count')
    .addColumn('id', 'text', (c) => c.primaryKey())
    .addColumn('who', 'text', (c) => c.notNull().references('account.id'))
    .addColumn('at', 'bigint', (c) => c.notNull())
    .addColumn('note', 'text', (c) => c.notNull())
    .addColumn('expected', 'integer', (c) => c.notNull())
    .addColumn('seen', 'integer', (c) => c.notNull())
    .execute()
  await indexes(db, 'day_count', ['who', 'at'])
  await ofPile(db, 'day_count_line')
    .addColumn('count_id', 'text', (c) => c.notNull().references('day_count.id'))
    .addColumn('subject', 'text', (c) => c.notNull())
    .addColumn('place', 'text')
    .addColumn('seen', 'integer', (c) => c.notNull())
    .addPrimaryKeyConstraint('day_count_line_pk', ['count_id', 'pile_id', 'subject'])
    .execute()
  await indexes(db, 'day_count_line', ['pile_id'])
}

export const custody: Migration = {
  async up(db) {
    await factSets(db)
    await movements(db)
    await parcelsAndChecks(db)
    await signOffAndCounts(db)
  },
}
