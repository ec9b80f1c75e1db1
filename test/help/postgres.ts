import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import pg from 'pg'
import type { TestProject } from 'vitest/node'
import { newId } from '../../src/base/ids.ts'

declare module 'vitest' {
  interface ProvidedContext {
    /** Address of a PostgreSQL server for the tests; null where PGlite stands in for one. */
    postgres: string | null
    /** How the names of this run's schemas begin. */
    schemas: string
    /** Where the run keeps its prepared PGlite. */
    pgliteDump: string
  }
}

const usual = 'postgres://root@127.0.0.1:5432/test'

/**
 * Decides once a run which PostgreSQL the tests use, and says so: the server of TEST_DATABASE_URL
 * (`pglite` asks for PGlite), else the usual local one if it answers, else PGlite.
 */
export default async function choosePostgres(project: TestProject): Promise<() => Promise<void>> {
  const named = process.env.TEST_DATABASE_URL
  const version = named === 'pglite' ? null : await answer(named ?? usual)
  if (named && named !== 'pglite' && !version)
    throw new Error('the server of TEST_DATABASE_URL does not answer')

  const folder = mkdtempSync(join(tmpdir(), 'pieceworth-pglite-'))
  const server = version ? (named ?? usual) : null
  const schemas = `test_${newId().toLowerCase().replaceAll(/\W/g, '')}_`
  project.provide('postgres', server)
  project.provide('schemas', schemas)
  project.provide('pgliteDump', join(folder, 'prepared.tar'))

  const used = version ? `server ${version} at ${place(named ?? usual)}` : `PGlite, ${why(named)}`
  process.stdout.write(`PostgreSQL of this run: ${used}\n`)
  return async () => {
    rmSync(folder, { recursive: true, force: true })
    if (server) await dropSchemas(server, schemas)
  }
}

/** One by one: what one transaction drops it locks, and the server holds only so many locks. */
async function dropSchemas(server: string, named: string): Promise<void> {
  const client = new pg.Client({ connectionString: server })
  await client.connect()
  try {
    const { rows } = await client.query(
      'select nspname as schema from pg_namespace where starts_with(nspname, $1)',
      [named],
    )
    for (const { schema } of rows) {
      await client.query(`drop schema ${client.escapeIdentifier(schema)} cascade`)
    }
  } finally {
    await client.end()
  }
}

/** Without the password. */
const place = (url: string) => `${new URL(url).host}${new URL(url).pathname}`

const why = (named: string | undefined) =>
  named ? 'as TEST_DATABASE_URL asks' : `for no server answers at ${place(usual)}`

async function answer(url: string): Promise<string | null> {
  const client = new pg.Client({ connectionString: url, connectionTimeoutMillis: 2000 })
  try {
    await client.connect()
    const { rows } = await client.query('show server_version')
    return rows[0].server_version
  } catch {
    return null
  } finally {
    await client.end().catch(() => {})
  }
}
