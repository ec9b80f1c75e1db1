import { join } from 'node:path'
import { DatabaseSync } from '@photostructure/sqlite'
import Fastify from 'fastify'
import pg from 'pg'
import type { StoreSettings } from '../../src/store/open.ts'

interface Row {
  readonly id: string
  readonly body: string
  readonly at: number
}

const statement = 'insert into bare (id, body, at) values'

/** Ways to keep a row durably, with nothing but the store's own driver, on the table that the bench made. */
function inserter({ databaseUrl, dataDir }: StoreSettings): (row: Row) => unknown {
  if (databaseUrl) {
    const pool = new pg.Pool({ connectionString: databaseUrl, max: 10 })
    return ({ id, body, at }) => pool.query(`${statement} ($1, $2, $3)`, [id, body, at])
  }
  const file = new DatabaseSync(join(dataDir, 'pieceworth.db'), { timeout: 1000 })
  for (const setting of ['journal_mode = wal', 'synchronous = full']) file.exec(`pragma ${setting}`)
  const insert = file.prepare(`${statement} (?, ?, ?)`)
  // A file that nobody names any more is closed under its statements.
  process.once('exit', () => file.close())
  return ({ id, body, at }) => insert.run(id, body, at)
}

/** What an answer is measured beside: a route that does one INSERT, and one that does nothing. */
const insert = inserter(JSON.parse(process.argv[2]!))
const app = Fastify()
app.post<{ Body: { idem: string } }>('/insert', async ({ body }) => {
  await insert({ id: body.idem, body: JSON.stringify(body), at: Date.now() })
  return { kept: true }
})
app.get('/hello', async () => ({ hello: 'world' }))
process.stdout.write(`listening ${await app.listen({ port: 0, host: '127.0.0.1' })}\n`)
