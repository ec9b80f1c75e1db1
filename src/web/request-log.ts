import type { FastifyInstance } from 'fastify'

/** One line a request: the route's pattern, never its address, which may hold a customer's key. */
export function logRequests(app: FastifyInstance): void {
  app.addHook('onResponse', async (request, reply) => {
    request.log.info(
      {
        method: request.method,
        route: request.routeOptions.url ?? 'none',
        status: reply.statusCode,
        ms: Math.round(reply.elapsedTime),
      },
      'request',
    )
  })
}
