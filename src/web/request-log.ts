import type { FastifyInstance } from 'fastify'
import type { Figures } from './figures.ts'

/** One line a request: the route's pattern, never its address, which may hold a customer's key. It is counted by that too. */
export function logRequests(app: FastifyInstance, figures: Pick<Figures, 'request'>): void {
  app.addHook('onResponse', (request, reply, done) => {
    const seen = {
      method: request.method,
      route: request.routeOptions.url ?? 'none',
      status: reply.statusCode,
    }
    figures.request({ ...seen, seconds: reply.elapsedTime / 1000 })
    request.log.info({ ...seen, ms: Math.round(reply.elapsedTime) }, 'request')
    done()
  })
}
