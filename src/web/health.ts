import type { FastifyInstance } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import type { LabelReader } from '../photo/label-words.ts'
import { anyone } from './who.ts'

const up = z.object({ status: z.literal('ok') })
const readiness = z.object({
  status: z.enum(['ok', 'not_ready']),
  store: z.boolean(),
  photos: z.boolean(),
  flows: z.boolean(),
  leaving: z.boolean(),
  labels: z.enum(['ready', 'starting', 'absent']),
})

export interface Probes {
  readonly store: () => Promise<void>
  readonly photos: () => Promise<void>
  readonly labels: LabelReader['state']
  /** The server is about to end: nobody is to be sent here any more. */
  readonly leaving: () => boolean
}

const holds = (probe: Promise<void>): Promise<boolean> =>
  probe.then(
    () => true,
    () => false,
  )

/**
 * `/healthz`: the process lives. `/readyz`: the store, the photo store and the flows are there, and it is not about to end; it also
 * tells of the reading of label photos, without which it is ready too: words are typed then.
 */
export const healthRoutes =
  (probes: Probes): FastifyPluginAsyncZod =>
  async (app: FastifyInstance) => {
    app.get(
      '/healthz',
      {
        config: { who: anyone, rateLimit: false },
        schema: { summary: 'Is the process alive?', response: { 200: up } },
      },
      async () => ({ status: 'ok' as const }),
    )
    app.get(
      '/readyz',
      {
        config: { who: anyone, rateLimit: false },
        schema: {
          summary:
            'Can it serve? Store, photo store and flows; and whether labels are read from photos.',
          response: { 200: readiness, 503: readiness },
        },
      },
      async (_, reply) => {
        const [store, photos] = await Promise.all([holds(probes.store()), holds(probes.photos())])
        const leaving = probes.leaving()
        const ready = store && photos && !leaving
        // Flows are checked before the server listens: a server that answers has them.
        return reply.status(ready ? 200 : 503).send({
          status: ready ? 'ok' : 'not_ready',
          store,
          photos,
          flows: true,
          leaving,
          labels: probes.labels(),
        })
      },
    )
  }
