import type { FastifyInstance } from 'fastify'
import { z } from 'zod'
import { newId } from '../../base/ids.ts'
import { announce } from '../../desk/parcels.ts'
import { pileOfKey } from '../../intake/rows.ts'
import { asFailure, wantsPage } from '../errors.ts'
import { customer } from '../who.ts'
import type { ChatContext } from './context.ts'
import { keyParams, openPile } from './opened.ts'
import { paths } from './paths.ts'
import { showConfirmed } from './show-place.ts'

const form = z.object({
  carrier: z.string().max(10_000).default(''),
  tracking: z.string().max(10_000).default(''),
  idem: z
    .string()
    .regex(/^[\w-]{8,64}$/)
    .optional()
    .transform((sent) => sent ?? newId()),
})

interface Sent {
  Params: z.infer<typeof keyParams>
  Body: z.infer<typeof form>
}

/** A customer tells that a parcel is on its way. */
export function postingRoutes(app: FastifyInstance, context: ChatContext): void {
  app.post<Sent>(
    '/i/:key/posted',
    {
      config: { who: customer },
      schema: { summary: 'Tells that a parcel was posted', params: keyParams, body: form },
    },
    async (request, reply) => {
      const { store, clock, knowledge } = context
      const { key } = request.params
      const row = await pileOfKey(store.db, key, clock)
      const { carrier, tracking, idem } = request.body
      // What the customer took back is sent to nobody; their page says so.
      if (row.status === 'withdrawn' || row.status === 'open') {
        return reply.redirect(paths.pile(key), 303)
      }
      try {
        await announce({ store, clock }, knowledge.shop, row.id, {
          carrier,
          tracking,
          insured: null,
          postedAt: clock(),
          expectedAt: null,
          who: null,
          idem,
        })
      } catch (error) {
        const failure = asFailure(error)
        if (failure.code !== 'answer_too_long' || !wantsPage(request)) throw error
        reply.status(failure.status)
        const opened = await openPile(context, key)
        const posting = { carrier, tracking, failure }
        return showConfirmed(context, request, reply, opened, { print: false, posting })
      }
      request.log.info({ pile: row.number }, 'a customer posted a parcel')
      return reply.redirect(`${paths.pile(key)}#posting`, 303)
    },
  )
}
