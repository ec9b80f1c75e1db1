// What a start is held against: Fastify with one route, and nothing else.
import Fastify from 'fastify'

const app = Fastify()
app.get('/readyz', async () => ({ status: 'ok' }))
await app.listen({ port: Number(process.env.PORT), host: '127.0.0.1' })
