import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import pg from 'pg'
import type { TestProject } from 'vitest/node'

declare module 'vitest' {
  interface ProvidedContext {
    /** Address of a PostgreSQL server for the tests; null where PGlite stands in for one. */
    postgres: string | null
    /** Where the run keeps its prepared PGlite. */
    pgliteDump: string
  }
}

const usual = 'postgres://root@127.0.0.1:5432/test'

/**
 * Decides once a run which PostgreSQL the tests use, and says so: the server of TEST_DATABASE_URL
 * (`pglite` asks for PGlite), else the usual local one if it answers, else PGlite.
 */
export default async function choosePostgres(project: TestProject): Promise<() => void> {
  const named = process.env.TEST_DATABASE_URL
  const version = named === 'pglite' ? null : await answer(named ?? usual)
  if (named && named !== 'pglite' && !version)
    throw new Error('the server of TEST_DATABASE_URL does not answer')

  const folder = mkdtempSync(join(tmpdir(), 'pieceworth-pglite-'))
  project.provide('postgres', version ? (named ?? usual) : null)
  project.provide('pgliteDump', join(folder, 'prepared.tar'))

  const used = version ? `server ${version} at ${place(named ?? usual)}` : `PGlite, ${why(named)}`
  process.stdout.write(`PostgreSQL of this run: ${used}\n`)
  return () => rmSync(folder, { recursive: true, force: true })
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
