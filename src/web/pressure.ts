import { monitorEventLoopDelay } from 'node:perf_hooks'
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import { Failure } from '../base/failures.ts'

export interface PressureLimits {
  /** Requests at work at once. A page takes some milliseconds; a photo, which waits, a second. */
  readonly requests: number
  /** How long the event loop may be held up, ms, at the middle of two looks on end. */
  readonly lagMs: number
}

export const usualPressure: PressureLimits = { requests: 400, lagMs: 1_500 }

/** How often the event loop is looked at, ms. */
const lookEvery = 1_000
/** What was seen of it holds no longer than this, ms, whenever the next look comes. */
const holdsFor = 2 * lookEvery

/** What must be answered whatever else waits: whoever watches asks there whether this process is well. */
const spared = ['/healthz', '/readyz', '/metrics']

declare module 'fastify' {
  interface FastifyInstance {
    /** A server that is asked to end says so at `/readyz`, and goes on answering until it is closed. */
    leaving: { now: boolean }
  }
}

/**
 * Refuses what is too much for this process, before anything is read or looked up: `busy`, 503 with Retry-After.
 * While the server leaves, each answer ends its connection, so that the next request comes to another one.
 */
export function relievePressure(app: FastifyInstance, { requests, lagMs }: PressureLimits): void {
  const leaving = { now: false }
  app.decorate('leaving', leaving)
  const delay = monitorEventLoopDelay({ resolution: 20 })
  delay.enable()
  let lagged = false
  let heldUntil = 0
  const timer = setInterval(() => {
    const lags = delay.percentile(50) / 1e6 > lagMs
    // One long piece of work is over when it is seen; only what goes on is too much.
    if (lags && lagged) heldUntil = performance.now() + holdsFor
    lagged = lags
    delay.reset()
  }, lookEvery).unref()
  const under = new Set<FastifyRequest>()

  // No promise for each of these: every request has them all.
  app.addHook('onRequest', (request: FastifyRequest, reply: FastifyReply, done) => {
    if (leaving.now) reply.header('connection', 'close')
    if (spared.includes(request.routeOptions.url ?? '')) return done()
    if (performance.now() < heldUntil || under.size >= requests) return done(new Failure('busy'))
    under.add(request)
    // A visitor who is gone before the answer was sent.
    reply.raw.once('close', () => under.delete(request))
    done()
  })
  app.addHook('onResponse', (request, _, done) => {
    under.delete(request)
    done()
  })
  app.addHook('onClose', async () => {
    clearInterval(timer)
    delay.disable()
  })
}
