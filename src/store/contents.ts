import { sql } from 'kysely'
import type { Store } from './open.ts'

/** A store, or a transaction on it. */
export type Within = Pick<Store, 'db' | 'dialect'>

/** Names of the tables that are there, of whatever version. */
export async function tablesIn({ db, dialect }: Within): Promise<ReadonlySet<string>> {
  const names =
    dialect === 'sqlite'
      ? sql<{ name: string }>`select name from sqlite_master where type = 'table'`
      : sql<{
          name: string
        }>`select tablename as name from pg_tables where schemaname = current_schema()`
  return new Set((await names.execute(db)).rows.map(({ name }) => name))
}

/** Names of the columns of a table that is there. */
export async function columnsIn({ db, dialect }: Within, table: string): Promise<string[]> {
  const names =
    dialect === 'sqlite'
      ? sql<{ name: string }>`select name from pragma_table_info(${table})`
      : sql<{ name: string }>`select column_name as name from information_schema.columns
          where table_schema = current_schema() and table_name = ${table}`
  return (await names.execute(db)).rows.map(({ name }) => name)
}

/** Names of the migrations a store has been through, in order; none: it has no tables yet. */
export async function migrationsIn(within: Within): Promise<string[]> {
  if (!(await tablesIn(within)).has('kysely_migration')) return []
  const done = await sql<{ name: string }>`select name from kysely_migration`.execute(within.db)
  return done.rows.map(({ name }) => name).sort()
}
