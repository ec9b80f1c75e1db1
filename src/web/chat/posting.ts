import type { FastifyInstance } from 'fastify'
import { z } from 'zod'
import { newId } from '../../base/ids.ts'
import { announce, parcelsOf } from '../../desk/parcels.ts'
import { pileOfKey } from '../../intake/rows.ts'
import type { PileRow } from '../../store/schema.ts'
import type { Language } from '../../words/words.ts'
import { customer } from '../who.ts'
import type { ChatContext } from './context.ts'
import { keyParams } from './opened.ts'
import { paths } from './paths.ts'
import type { Posting } from './view.ts'

const form = z.object({
  carrier: z.string().max(10_000).default(''),
  tracking: z.string().max(10_000).default(''),
  idem: z
    .string()
    .regex(/^[\w-]{8,64}$/)
    .optional()
    .transform((sent) => sent ?? newId()),
})

/** The form to say that a parcel was posted, with what was said so far. */
export async function postingOf(
  { store }: ChatContext,
  row: PileRow,
  key: string,
  { say }: Language,
): Promise<Posting> {
  const parcels = await parcelsOf(store.db, row.id)
  return {
    postTo: paths.posted(key),
    idem: newId(),
    told: parcels.map(({ carrier, tracking, state }) =>
      say('custody.post.announced', { carrier, tracking, state: say(`custody.states.${state}`) }),
    ),
  }
}

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
      await announce({ store, clock }, knowledge.shop, row.id, {
        carrier,
        tracking,
        insured: null,
        postedAt: clock(),
        expectedAt: null,
        who: null,
        idem,
      })
      request.log.info({ pile: row.number }, 'a customer posted a parcel')
      return reply.redirect(`${paths.pile(key)}#posting`, 303)
    },
  )
}
