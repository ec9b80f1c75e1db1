import type { FastifyReply, FastifyRequest } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { giveRoles } from '../../desk/garment-roles.ts'
import { planReviewed } from '../../desk/planned.ts'
import { pileAtDesk, review } from '../../desk/review.ts'
import { asPlanned } from '../../intake/planned.ts'
import { roles } from '../../quilt/layout.ts'
import { drawnOrFail } from '../chat/quilts.ts'
import { asFailure, wantsPage } from '../errors.ts'
import { quiltFile, sendQuiltPng } from '../quilt-png.ts'
import { staff } from '../who.ts'
import { type DeskContext, deskLanguage } from './context.ts'
import { signedIn } from './guard.ts'
import { showDesk } from './page.ts'
import { deskPaths } from './paths.ts'
import { planPage } from './present-plan.ts'
import type { PlanReader } from './present-plan-garments.ts'
import { reviewedQuilts } from './present-plan-quilt.ts'

const params = z.object({ pile: z.string().min(1).max(64) })

const query = z.object({
  cuts: z.coerce.number().int().min(1).max(1_000_000).catch(1),
  open: z.literal('all').optional().catch(undefined),
  costs: z.literal('1').optional().catch(undefined),
  lang: z.string().max(8).optional(),
})

const garmentParams = params.extend({ n: z.coerce.number().int().min(1).max(100_000) })

const rolesForm = z.object({
  csrf: z.string().max(200),
  seen: z.coerce.number().int().min(0).default(0),
  /** None: any. */
  plays: z
    .union([z.enum(roles).transform((one) => [one]), z.array(z.enum(roles)).max(roles.length)])
    .default([]),
})

/** How a pile becomes its quilt: who gives what, how it is cut, and what is bought. */
export const planRoutes =
  (context: DeskContext): FastifyPluginAsyncZod =>
  async (app) => {
    const readerOf = async (request: FastifyRequest): Promise<PlanReader> => {
      const { pile } = request.params as { pile: string }
      return {
        review: await review(context.store.db, context.knowledge, pile),
        csrf: signedIn(request).csrf,
        language: deskLanguage(request, context),
      }
    }

    /** What somebody else said meanwhile is shown with the page itself. */
    const showRefused = async (error: unknown, request: FastifyRequest, reply: FastifyReply) => {
      const failure = asFailure(error)
      const shows = failure.code === 'decided_meanwhile' && request.atDesk && wantsPage(request)
      if (!shows) throw error
      const wish = { cuts: { page: 1, open: false }, costs: false }
      const reader = await readerOf(request)
      const page = await planPage(reader, context, wish, failure)
      return showDesk(context, request, reply.status(failure.status), page, {
        path: deskPaths.plan(reader.review.row.number),
      })
    }

    app.get(
      '/piles/:pile/plan',
      {
        config: { who: staff },
        schema: { summary: 'The plan of a pile, to print', params, querystring: query },
      },
      async (request, reply) => {
        const { cuts, open, costs } = request.query
        const wish = { cuts: { page: cuts, open: open === 'all' }, costs: costs !== undefined }
        const page = await planPage(await readerOf(request), context, wish)
        if (page.state === 'failed') reply.status(503)
        return showDesk(context, request, reply, page)
      },
    )

    app.post(
      '/piles/:pile/garments/:n/roles',
      {
        config: { who: staff },
        schema: {
          summary: 'Says which parts of the quilt a garment may go to',
          params: garmentParams,
          body: rolesForm,
        },
        errorHandler: showRefused,
      },
      async (request, reply) => {
        const { pile, n } = request.params
        const { plays, seen } = request.body
        const { id, number } = await pileAtDesk(context.store.db, pile)
        const who = signedIn(request).account.id
        await giveRoles(context, id, n, { roles: plays, who, seen })
        return reply.redirect(`${deskPaths.plan(number)}#given-${n}`, 303)
      },
    )

    app.get(
      '/piles/:pile/quilt/:file',
      {
        config: { who: staff },
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
