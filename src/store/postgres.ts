import {
  type Dialect,
  PostgresDialect,
  type PostgresPool,
  type PostgresPoolClient,
  type PostgresQueryResult,
} from 'kysely'
import pg from 'pg'
import { Failure } from '../base/failures.ts'
import { refuseInside } from './inside.ts'
import { asFailure } from './trouble.ts'

const limits = {
  max: 10,
  connectionTimeoutMillis: 5_000,
  query_timeout: 30_000,
  idle_in_transaction_session_timeout: 30_000,
}

/** int8 comes as text, for it may pass 2^53; ours are times, counts and sums that cannot. */
const types = {
  getTypeParser: (oid: number, format: 'text' | 'binary') =>
    oid === pg.types.builtins.INT8 ? Number : pg.types.getTypeParser(oid, format),
} as pg.CustomTypesConfig

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
        const result = await client.query(sql as string, parameters as unknown[])
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
  const pool = new pg.Pool({ connectionString: url, types, ...limits })
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

/** Any pool in pg's shape, kept from being used beside a transaction from inside it. */
export const poolDialect = (pool: PostgresPool): Dialect =>
  new PostgresDialect({
    pool: {
      ...pool,
      connect: async () => {
        refuseInside()
        return pool.connect()
      },
    },
  })

export const postgresDialect = (url: string): Dialect => poolDialect(openPool(url))
