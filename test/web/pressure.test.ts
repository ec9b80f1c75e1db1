import Fastify from 'fastify'
import { expect, test } from 'vitest'
import { asFailure } from '../../src/web/errors.ts'
import { relievePressure } from '../../src/web/pressure.ts'
import { oneStore } from '../help/stores.ts'
import { openWorkshop } from '../help/workshop.ts'

test('more requests than a server can work on are refused at once, and taken again when it can', async () => {
  const app = Fastify()
  app.setErrorHandler((error, _, reply) => reply.status(asFailure(error).status).send(''))
  relievePressure(app, { requests: 2, lagMs: 1_000_000 })
  const open: (() => void)[] = []
  app.get('/slow', () => new Promise<string>((resolve) => open.push(() => resolve('done'))))
  app.get('/healthz', async () => 'ok')
  await app.listen({ port: 0, host: '127.0.0.1' })
  const { port } = app.server.address() as { port: number }
  const ask = (path: string, signal?: AbortSignal) =>
    fetch(`http://127.0.0.1:${port}${path}`, signal ? { signal } : {}).then(({ status }) => status)
  const until = async (holds: () => boolean | Promise<boolean>) => {
    while (!(await holds())) await new Promise((resolve) => setTimeout(resolve, 5))
  }
  try {
    const gone = new AbortController()
    const first = ask('/slow')
    const second = ask('/slow', gone.signal).catch(() => 'gone')
    await until(() => open.length === 2)
    expect(await ask('/slow')).toBe(503)
    // Whoever watches is answered all the same.
    expect(await ask('/healthz')).toBe(200)
    // A visitor who leaves makes room.
    gone.abort()
    expect(await second).toBe('gone')
    const third = (async () => {
      let status = 503
      while (status === 503) status = await ask('/slow')
      return status
    })()
    await until(() => open.length === 3)
    for (const done of open) done()
    expect([await first, await third]).toEqual([200, 200])
  } finally {
    await app.close()
  }
})

oneStore('a server that has too much to do', (store) => {
  test('says so to a person and to a program, with when to try again and its name in the log', async () => {
    const workshop = await openWorkshop(store(), () => Date.UTC(2026, 5, 1), {
      pressure: { requests: 0, lagMs: 1_000_000 },
    })
    try {
      const person = await workshop.app.inject({
        url: '/i/any-key-at-all',
        headers: { accept: 'text/html', 'accept-language': 'es' },
      })
      expect(person.statusCode).toBe(503)
      expect(Number(person.headers['retry-after'])).toBeGreaterThan(0)
      expect(person.body).toContain('<html lang="es"')
      const id = /mencione esto, por favor: busy ([\w-]{16})/.exec(person.body)?.[1]
      expect(id).toBeDefined()
      const program = await workshop.app.inject({ method: 'POST', url: '/i', payload: {} })
      expect(program.statusCode).toBe(503)
      expect(program.json()).toMatchObject({
        code: 'busy',
        request: expect.stringMatching(/^[\w-]{16}$/),
      })
      expect((await workshop.app.inject({ url: '/readyz' })).statusCode).toBe(200)
      expect(await store().db.selectFrom('pile').select('id').execute()).toEqual([])
    } finally {
      await workshop.close()
    }
  })

  test('and one that leaves says at /readyz that nobody is to be sent there, and still answers', async () => {
    const workshop = await openWorkshop(store(), () => Date.UTC(2026, 5, 1))
    try {
      workshop.app.leaving.now = true
      const ready = await workshop.app.inject({ url: '/readyz' })
      expect(ready.statusCode).toBe(503)
      expect(ready.json()).toMatchObject({ status: 'not_ready', leaving: true, store: true })
      const page = await workshop.app.inject({ url: '/' })
      expect(page.statusCode).toBe(200)
      expect(page.headers.connection).toBe('close')
    } finally {
      await workshop.close()
    }
  })
})
