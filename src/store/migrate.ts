import { type Migration, Migrator, sql } from 'kysely'
import { Failure } from '../base/failures.ts'
import { migrations as released } from './migrations/list.ts'
import type { Store } from './open.ts'

const table = 'kysely_migration'

/**
 * Brings the tables up to this version. Several processes may do so at once: one works, the others
 * wait. Throws `store_too_new` when a newer version of the product has changed the store.
 */
export async function migrate(
  store: Store,
  migrations: Readonly<Record<string, Migration>> = released,
): Promise<void> {
  const schema = await currentSchema(store)
  const migrator = new Migrator({
    db: store.db,
    provider: { getMigrations: async () => ({ ...migrations }) },
    // Without it the migrator takes the same table of any other schema for ours.
    ...(schema ? { migrationTableSchema: schema } : {}),
    // It orders what was done by the clock of the day, and clocks are set back; names are our order.
    allowUnorderedMigrations: true,
  })
  await refuseNewer(store, schema, migrations)
  const { error } = await migrator.migrateToLatest()
  if (!error) return
  // Another process may have been the newer one in the meantime.
  await refuseNewer(store, schema, migrations)
  throw error
}

/** Where PostgreSQL puts new tables; SQLite has one place. */
async function currentSchema({ db, dialect }: Store): Promise<string | undefined> {
  if (dialect === 'sqlite') return undefined
  const found = await sql<{ name: string }>`select current_schema() as name`.execute(db)
  return found.rows[0]?.name
}

async function refuseNewer(
  store: Store,
  schema: string | undefined,
  known: Readonly<Record<string, Migration>>,
) {
  const unknown = (await migrated(store, schema)).filter((name) => !(name in known))
  if (unknown.length > 0) throw new Failure('store_too_new', { migration: unknown.sort().at(-1)! })
}

/** Names of the migrations the store has been through. */
async function migrated({ db }: Store, schema: string | undefined): Promise<string[]> {
  const tables = await db.introspection.getTables({ withInternalKyselyTables: true })
  const begun = tables.some((t) => t.name === table && (!schema || t.schema === schema))
  if (!begun) return []
  const place = schema ? sql.id(schema, table) : sql.id(table)
  const done = await sql<{ name: string }>`select name from ${place}`.execute(db)
  return done.rows.map(({ name }) => name)
}
