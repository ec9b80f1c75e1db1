import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { review } from '../../desk/review.ts'
import { workshop } from '../who.ts'
import { type DeskContext, deskLanguage } from './context.ts'
import { showDesk } from './page.ts'
import { teardownPage } from './present-teardown.ts'

const params = z.object({
  pile: z.string().min(1).max(64),
  n: z.coerce.number().int().min(1).max(100_000),
})

/** The bench's papers of one garment. */
export const teardownRoutes =
  (context: DeskContext): FastifyPluginAsyncZod =>
  async (app) => {
    app.get(
      '/piles/:pile/garments/:n/teardown',
      {
        config: { who: workshop },
        schema: { summary: 'How one garment is taken apart, to print', params },
      },
      async (request, reply) => {
        const { pile, n } = request.params
        const found = await review(context.store.db, context.knowledge, pile)
        return showDesk(
          context,
          request,
          reply,
          teardownPage(found, n, deskLanguage(request, context)),
        )
      },
    )
  }
