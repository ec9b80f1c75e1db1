import cookie from '@fastify/cookie'
import helmet from '@fastify/helmet'
import rateLimit from '@fastify/rate-limit'
import type { FastifyInstance } from 'fastify'

/**
 * One person who clicks steadily sends ten answers a second, each with the page that follows it, and a
 * household or an office shares one address. The limit is ten such people, per address.
 */
export const requestsPerMinute = 12_000

/** Headers and limits that hold on every route. */
export async function secure(app: FastifyInstance, { https }: { https: boolean }): Promise<void> {
  await app.register(helmet, {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'none'"],
        scriptSrc: ["'self'"],
        styleSrc: ["'self'"],
        imgSrc: ["'self'", 'data:', 'blob:'],
        fontSrc: ["'self'"],
        connectSrc: ["'self'"],
        formAction: ["'self'"],
        baseUri: ["'none'"],
        frameAncestors: ["'none'"],
      },
    },
    referrerPolicy: { policy: 'no-referrer' },
    strictTransportSecurity: https ? { maxAge: 31_536_000 } : false,
    crossOriginEmbedderPolicy: false,
  })
  await app.register(rateLimit, { global: true, max: requestsPerMinute, timeWindow: '1 minute' })
  await app.register(cookie)
}
