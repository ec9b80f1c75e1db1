import { createServer, type Server, type Socket } from 'node:net'
import { afterEach, expect, test } from 'vitest'
import { storeOver } from '../../src/store/open.ts'
import { postgresDialect } from '../../src/store/postgres.ts'

// Bytes of the frontend/backend protocol 3.0 (PostgreSQL manual, "Message Formats").
const authenticationOk = Buffer.from([0x52, 0, 0, 0, 8, 0, 0, 0, 0])
const readyForQuery = Buffer.from([0x5a, 0, 0, 0, 5, 0x49])

let server: Server
afterEach(() => server.close())

/** A server that lets anyone in and does this with whatever is asked after that. */
async function listen(onQuery: (socket: Socket) => void): Promise<string> {
  server = createServer((socket) => {
    socket.once('data', () => {
      socket.write(Buffer.concat([authenticationOk, readyForQuery]))
      socket.on('data', () => onQuery(socket))
    })
    socket.on('error', () => {})
  })
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  return `postgres://someone@127.0.0.1:${(server.address() as { port: number }).port}/shop`
}

test('a server that goes away under a query is unavailable, and the work is not done twice', async () => {
  let queries = 0
  const url = await listen((socket) => {
    queries += 1
    socket.destroy()
  })
  const store = storeOver(postgresDialect(url), 'postgres')
  const body = store.transaction((trx) => trx.selectFrom('pile').selectAll().execute())
  await expect(body).rejects.toMatchObject({ code: 'store_unavailable', status: 503 })
  expect(queries).toBe(1)

  await expect(store.ready()).rejects.toMatchObject({ code: 'store_unavailable' })
  expect(queries).toBe(2)
  await store.close()
})
