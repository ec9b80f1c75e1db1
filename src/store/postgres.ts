import {
  type DatabaseConnection,
  type Dialect,
  type Kysely,
  PostgresDialect,
  PostgresDriver,
  PostgresIntrospector,
  type PostgresPool,
  type PostgresPoolClient,
  type PostgresQueryResult,
  sql,
  type TableMetadata,
  type TransactionSettings,
} from 'kysely'
import pg from 'pg'
import { Failure } from '../base/failures.ts'
import { namesOfFixed } from './given-rows.ts'
import { refuseInside } from './inside.ts'
import { whatWasSent } from './last.ts'
import { asFailure } from './trouble.ts'

const settings = {
  max: 10,
  // What is sent together goes out at once, and no statement waits for the answer to the one before.
  pipeline: true,
  connectionTimeoutMillis: 5_000,
  query_timeout: 30_000,
  idle_in_transaction_session_timeout: 30_000,
}

/** int8 comes as text, for it may pass 2^53; ours are times, counts and sums that cannot. */
const types = {
  getTypeParser: (oid: number, format: 'text' | 'binary') =>
    oid === pg.types.builtins.INT8 ? Number : pg.types.getTypeParser(oid, format),
} as pg.CustomTypesConfig

/** What is the same each time is read by the server once for each connection. */
function asked(text: string, values: unknown[]): pg.QueryConfig {
  const name = namesOfFixed.get(text)
  return name ? { name, text, values } : { text, values }
}

/** A connection that failed under a query is thrown away instead of handed on. */
function guardedClient(client: pg.PoolClient): PostgresPoolClient {
  let broken = false
  // Unheard, the news that a connection in use was lost would end the process; the query fails too.
  const lost = () => {
    broken = true
  }
  client.on('error', lost)
  return {
    query: async <R>(sql: unknown, parameters?: readonly unknown[]) => {
      try {
        const result = await client.query(asked(sql as string, parameters as unknown[]))
        return result as unknown as PostgresQueryResult<R>
      } catch (error) {
        const failure = asFailure(error)
        broken ||= failure instanceof Failure && failure.code === 'store_unavailable'
        throw failure
      }
    },
    release: () => {
      client.off('error', lost)
      client.release(broken)
    },
  } as PostgresPoolClient
}

function openPool(url: string): PostgresPool {
  const pool = new pg.Pool({ connectionString: url, types, ...settings })
  // An idle connection that breaks tells nobody anything: the next query finds out by itself.
  pool.on('error', () => {})
  return {
    connect: async () => {
      try {
        return guardedClient(await pool.connect())
      } catch (cause) {
        throw new Failure('store_unavailable', {}, { cause })
      }
    },
    end: () => pool.end(),
  }
}

/**
 * What need not wait for an answer is sent at once: `begin` goes out with the first statement of a transaction, and
 * `commit` with the last. Where one of them fails, so does all that was sent behind it.
 */
class PromptDriver extends PostgresDriver {
  override async beginTransaction(
    connection: DatabaseConnection,
    settings: TransactionSettings,
  ): Promise<void> {
    // A connection on which this fails is lost, which the next statement tells.
    super.beginTransaction(connection, settings).catch(() => {})
  }

  override async commitTransaction(connection: DatabaseConnection): Promise<void> {
    const committed = super.commitTransaction(connection)
    committed.catch(() => {})
    await whatWasSent(connection)
    await committed
  }

  override async rollbackTransaction(
    connection: Parameters<PostgresDriver['rollbackTransaction']>[0],
  ): Promise<void> {
    await whatWasSent(connection).catch(() => {})
    await super.rollbackTransaction(connection)
  }
}

/**
 * Names of our own schema's tables, which is all that migrating asks. Kysely's own looks up every column of every
 * schema, and trips over a table that another shop, or another test, takes away at that moment.
 */
class OwnTables extends PostgresIntrospector {
  readonly #db: Kysely<unknown>

  constructor(db: Kysely<unknown>) {
    super(db)
    this.#db = db
  }

  override async getTables(): Promise<TableMetadata[]> {
    const { rows } = await sql<{ name: string; schema: string }>`select tablename as name,
      schemaname as schema from pg_tables where schemaname = current_schema()`.execute(this.#db)
    return rows.map((table) => ({ ...table, isView: false, columns: [] }))
  }
}

/** Any pool in pg's shape, kept from being used beside a transaction from inside it. */
export function poolDialect(pool: PostgresPool): Dialect {
  const guarded: PostgresPool = {
    ...pool,
    connect: async () => {
      refuseInside()
      return pool.connect()
    },
  }
  const dialect = new PostgresDialect({ pool: guarded })
  dialect.createDriver = () => new PromptDriver({ pool: guarded })
  dialect.createIntrospector = (db) => new OwnTables(db)
  return dialect
}

export const postgresDialect = (url: string): Dialect => poolDialect(openPool(url))
