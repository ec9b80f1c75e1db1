import { test } from 'vitest'
import { killedOnPostgres, killedOnSqlite } from '../help/survive.ts'

const kills = 20

/** Every kill costs a start of the server; both stores take their turns side by side. */
const patience = { timeout: 240_000 }

test.concurrent(
  'nothing acknowledged is lost or doubled when the server is killed (SQLite)',
  patience,
  () => killedOnSqlite(kills),
)

test.concurrent(
  'nothing acknowledged is lost or doubled when one of two servers is killed (PostgreSQL)',
  patience,
  () => killedOnPostgres(kills),
)
