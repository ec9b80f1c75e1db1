import type { FastifyInstance, FastifyRequest } from 'fastify'
import { Failure } from '../base/failures.ts'
import { sameSecret } from '../desk/sessions.ts'
import type { Figures } from './figures.ts'
import { operator } from './who.ts'

const thisMachine = /^(?:127\.\d+\.\d+\.\d+|::1|::ffff:127\.\d+\.\d+\.\d+)$/

/** What a proxy adds to what it hands on from elsewhere (RFC 7239, and what was usual before it). */
const handedOn = ['forwarded', 'x-forwarded-for', 'x-real-ip', 'via'] as const

/** Straight from this machine: not by way of a proxy on it. */
const fromHere = ({ socket, headers }: FastifyRequest): boolean =>
  thisMachine.test(socket.remoteAddress ?? '') && handedOn.every((name) => !(name in headers))

const bearer = (request: FastifyRequest): string =>
  /^Bearer +(\S+)$/i.exec(request.headers.authorization ?? '')?.[1] ?? ''

/**
 * `/metrics`, for whoever runs the server: with a token whoever bears it, without one this machine alone. To anybody
 * else there is no such page.
 */
export function figuresRoute(app: FastifyInstance, figures: Figures, token: string | null): void {
  const mayRead = (request: FastifyRequest) =>
    token === null ? fromHere(request) : sameSecret(bearer(request), token)
  app.get(
    '/metrics',
    {
      config: { who: operator },
      schema: { summary: 'Figures of this process, in the text format that Prometheus reads' },
    },
    async (request, reply) => {
      if (!mayRead(request)) throw new Failure('not_found')
      const { type, text } = await figures.told()
      return reply.type(type).header('cache-control', 'no-store').send(text)
    },
  )
}
