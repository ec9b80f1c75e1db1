import { IncomingMessage, type OutgoingHttpHeaders, ServerResponse } from 'node:http'
import { Socket } from 'node:net'
import cookie from '@fastify/cookie'
import rateLimit, { type FastifyRateLimitStoreCtor } from '@fastify/rate-limit'
import type { FastifyInstance } from 'fastify'
import helmet from 'helmet'
import { type LimitParts, limitCounts, SharedCounts } from './use-limits.ts'

/**
 * One person who clicks steadily sends ten answers a second, each with the page that follows it, and a
 * household or an office shares one address. The limit is ten such people, per address.
 */
export const requestsPerMinute = 12_000

/** The shop's start page and a customer's pile: what may stand in a frame on a page that the shop allows. */
const framed = /^\/(?:$|\?|i(?:$|[/?]))/

export interface HeaderParts {
  readonly https: boolean
  readonly embedOrigins: readonly string[]
}

/**
 * Headers of every answer, those that refuse too: it comes before whatever may refuse. `embedOrigins`: whose pages
 * may hold the customer's pages in a frame, besides our own; nobody may hold others.
 */
export function secureHeaders(app: FastifyInstance, { https, embedOrigins }: HeaderParts): void {
  const inFrames = headersOf(https, ["'self'", ...embedOrigins])
  const inNone = headersOf(https, ["'none'"])
  app.addHook('onRequest', (request, reply, done) => {
    reply.headers(framed.test(request.raw.url ?? '') ? inFrames : inNone)
    done()
  })
}

/** They hang on nothing else of a request: worked out once, on an answer that goes nowhere. */
function headersOf(https: boolean, frameAncestors: readonly string[]): OutgoingHttpHeaders {
  const request = new IncomingMessage(new Socket())
  const answer = new ServerResponse(request)
  helmet({
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
        frameSrc: ["'self'"],
        frameAncestors,
      },
    },
    referrerPolicy: { policy: 'no-referrer' },
    strictTransportSecurity: https ? { maxAge: 31_536_000 } : false,
    crossOriginEmbedderPolicy: false,
    // `frame-ancestors` says it, and can name who may.
    xFrameOptions: false,
  })(request, answer, (error) => {
    if (error) throw error
  })
  return answer.getHeaders()
}

/** Limits that hold on every route, and cookies. */
export async function secure(app: FastifyInstance, counted: LimitParts): Promise<void> {
  const shared = new SharedCounts(counted)
  app.addHook('onClose', async () => shared.close())
  await app.register(rateLimit, {
    global: true,
    max: requestsPerMinute,
    timeWindow: '1 minute',
    store: limitCounts(counted, shared) as FastifyRateLimitStoreCtor,
  })
  await app.register(cookie)
}
