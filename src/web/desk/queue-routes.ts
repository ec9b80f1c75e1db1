import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { askedMeanwhile } from '../../desk/asked.ts'
import { leftPiles } from '../../desk/left.ts'
import { queue, queueFilters, queueLists, queueOrders } from '../../desk/queue.ts'
import { closeSession } from '../../desk/sessions.ts'
import { staff, workshop } from '../who.ts'
import { type DeskContext, deskLanguage } from './context.ts'
import { clearSession, sessionCookie } from './cookies.ts'
import { signedIn } from './guard.ts'
import { showDesk } from './page.ts'
import { deskPaths } from './paths.ts'
import { queuePage } from './present-queue.ts'

const queueQuery = z.object({
  list: z.enum(queueLists).catch('us'),
  order: z.enum(queueOrders).nullable().catch(null).default(null),
  only: z.enum(queueFilters).nullable().catch(null).default(null),
  text: z.string().max(200).catch('').default(''),
  page: z.coerce.number().int().min(1).max(1_000_000).catch(1),
  lang: z.string().max(8).optional(),
})

const signOutForm = z.object({ csrf: z.string().max(200) })

/** The queue, and the way out. */
export const queueRoutes =
  (context: DeskContext): FastifyPluginAsyncZod =>
  async (app) => {
    const { store, clock } = context

    app.get(
      '/',
      {
        config: { who: workshop },
        schema: {
          summary: 'Piles by whom they wait on, narrowed and sorted as asked',
          querystring: queueQuery,
        },
      },
      async (request, reply) => {
        if (!staff.includes(signedIn(request).account.role)) {
          return reply.redirect(deskPaths.bench, 303)
        }
        const { list, order, only, text, page } = request.query
        const wanted = { list, only, text, page, at: clock(), ...(order && { order }) }
        const found = await queue(store.db, wanted)
        const beside =
          list === 'us'
            ? { asked: await askedMeanwhile(store.db), left: await leftPiles(store.db) }
            : { asked: [], left: [] }
        return showDesk(
          context,
          request,
          reply,
          queuePage(found, beside, wanted, deskLanguage(request, context)),
          { counts: found.counts, list },
        )
      },
    )

    app.post(
      '/sign-out',
      { config: { who: workshop }, schema: { summary: 'Signs out', body: signOutForm } },
      async (request, reply) => {
        await closeSession(store.db, request.cookies[sessionCookie]!)
        return clearSession(reply, context).redirect(deskPaths.signIn, 303)
      },
    )
  }
