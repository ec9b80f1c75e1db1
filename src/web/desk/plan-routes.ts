import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { planReviewed } from '../../desk/planned.ts'
import { review } from '../../desk/review.ts'
import { asPlanned } from '../../intake/planned.ts'
import { drawnOrFail } from '../chat/quilts.ts'
import { quiltFile, sendQuiltPng } from '../quilt-png.ts'
import { type DeskContext, deskLanguage } from './context.ts'
import { showDesk } from './page.ts'
import { planPage } from './present-plan.ts'
import { reviewedQuilts } from './present-plan-quilt.ts'

const params = z.object({ pile: z.string().min(1).max(64) })

const query = z.object({
  cuts: z.coerce.number().int().min(1).max(1_000_000).catch(1),
  open: z.literal('all').optional().catch(undefined),
  lang: z.string().max(8).optional(),
})

/** How a pile becomes its quilt: who gives what, how it is cut, and what is bought. */
export const planRoutes =
  (context: DeskContext): FastifyPluginAsyncZod =>
  async (app) => {
    app.get(
      '/piles/:pile/plan',
      { schema: { summary: 'The plan of a pile, to print', params, querystring: query } },
      async (request, reply) => {
        const { cuts, open } = request.query
        const found = await review(context.store.db, context.knowledge, request.params.pile)
        const wish = { page: cuts, open: open === 'all' }
        const page = await planPage(found, context, wish, deskLanguage(request, context))
        if (page.state === 'failed') reply.status(503)
        return showDesk(context, request, reply, page)
      },
    )

    app.get(
      '/piles/:pile/quilt/:file',
      {
        schema: {
          summary: 'The picture of one quilt of a pile, as a PNG',
          params: params.extend({ file: quiltFile }),
        },
      },
      async (request, reply) => {
        const { pile, file: n } = request.params
        const found = await review(context.store.db, context.knowledge, pile)
        const planned = await asPlanned(planReviewed(found), context.plans)
        const quilts = drawnOrFail(await reviewedQuilts(context, found, planned))
        return sendQuiltPng(context, reply, found.row.id, quilts[n - 1])
      },
    )
  }
