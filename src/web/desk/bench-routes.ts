import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { bench } from '../../desk/benched.ts'
import { workshop } from '../who.ts'
import { type DeskContext, deskLanguage } from './context.ts'
import { showDesk } from './page.ts'
import { benchPage } from './present-bench.ts'

const query = z.object({
  page: z.coerce.number().int().min(1).max(1_000_000).catch(1),
  lang: z.string().max(8).optional(),
})

/** Where the bench begins. */
export const benchRoutes =
  (context: DeskContext): FastifyPluginAsyncZod =>
  async (app) => {
    app.get(
      '/bench',
      {
        config: { who: workshop },
        schema: { summary: 'Garments of the piles that were accepted', querystring: query },
      },
      async (request, reply) => {
        const found = await bench(context.store.db, request.query)
        return showDesk(context, request, reply, benchPage(found, deskLanguage(request, context)))
      },
    )
  }
