import { once } from 'node:events'
import type { AddressInfo } from 'node:net'
import { connect } from 'node:net'
import { setTimeout as pause } from 'node:timers/promises'
import Fastify from 'fastify'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { answerUnread } from '../../src/web/unread-requests.ts'

const app = Fastify({ clientErrorHandler: answerUnread })
app.get('/', async () => 'read')

beforeAll(() => app.listen({ port: 0, host: '127.0.0.1' }))
afterAll(() => app.close())

/** All that comes back for bytes as they are, and whether the connection was reset. */
async function raw(parts: readonly string[]): Promise<{ answer: string; trouble: string | null }> {
  const { port } = app.server.address() as AddressInfo
  const socket = connect({ port, host: '127.0.0.1', allowHalfOpen: true })
  let answer = ''
  let trouble: string | null = null
  socket.setEncoding('latin1').on('data', (part) => {
    answer += part
  })
  socket.on('error', (error: NodeJS.ErrnoException) => {
    trouble = error.code ?? error.message
  })
  for (const part of parts) {
    if (socket.destroyed) break
    socket.write(part)
    await pause(1)
  }
  if (!socket.readableEnded && !socket.destroyed)
    await Promise.race([once(socket, 'end'), once(socket, 'close')])
  socket.destroy()
  return { answer, trouble }
}

const head = 'connection: close\r\ncontent-length: 0\r\n\r\n'

// RFC 6585, 5: 431 for header fields that are too large; RFC 9110, 9.3.2: no content in an answer to HEAD.
test('a HEAD whose address is too long is answered without content', async () => {
  const { answer, trouble } = await raw([`HEAD /${'x'.repeat(70_000)} HTTP/1.1\r\nhost: a\r\n\r\n`])
  expect(answer).toBe(`HTTP/1.1 431 Request Header Fields Too Large\r\n${head}`)
  expect(trouble).toBeNull()
})

test('whoever goes on sending still reads the answer, and the connection is not reset', async () => {
  const { answer, trouble } = await raw([
    `GET /${'x'.repeat(20_000)}`,
    ...Array.from({ length: 40 }, () => 'y'.repeat(20_000)),
  ])
  expect(answer).toBe(`HTTP/1.1 431 Request Header Fields Too Large\r\n${head}`)
  expect(trouble).toBeNull()
})

test('what is no request at all is a bad one', async () => {
  expect((await raw(['\u0000\u0001 nothing\r\n\r\n'])).answer).toBe(
    `HTTP/1.1 400 Bad Request\r\n${head}`,
  )
})

test('a request that can be read is answered as ever', async () => {
  const { answer } = await raw(['GET / HTTP/1.1\r\nhost: a\r\nconnection: close\r\n\r\n'])
  expect(answer).toMatch(/^HTTP\/1.1 200 OK\r\n/)
  expect(answer).toMatch(/\r\n\r\nread$/)
})
