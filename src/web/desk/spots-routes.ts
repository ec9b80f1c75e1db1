import type { FastifyReply, FastifyRequest } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import type { Failure, FailureCode } from '../../base/failures.ts'
import { pileAtDesk, review } from '../../desk/review.ts'
import { changeSpots, type SpotChange } from '../../desk/spots.ts'
import { readSpotKey } from '../../intake/spot-marking.ts'
import { asFailure, wantsPage } from '../errors.ts'
import { staff } from '../who.ts'
import { type DeskContext, deskLanguage } from './context.ts'
import { signedIn } from './guard.ts'
import { showDesk } from './page.ts'
import { deskPaths } from './paths.ts'
import { spotsPage } from './present-spots.ts'

const params = z.object({
  pile: z.string().min(1).max(64),
  n: z.coerce.number().int().min(1).max(100_000),
})

const csrf = z.string().max(200)
const spot = z.string().max(200)
const form = z.discriminatedUnion('act', [
  z.object({
    act: z.literal('mark'),
    csrf,
    what: z.string().max(40).default(''),
    cell: z.string().max(200).optional(),
  }),
  z.object({ act: z.literal('part'), csrf, spot, part: z.string().max(40) }),
  z.object({ act: z.literal('unmark'), csrf, spot }),
])

function changeIn(body: z.infer<typeof form>): SpotChange {
  switch (body.act) {
    case 'mark':
      return { act: 'mark', at: body.cell, what: body.what }
    case 'part':
      return { act: 'part', spot: readSpotKey(body.spot), part: body.part }
    case 'unmark':
      return { act: 'unmark', spot: readSpotKey(body.spot) }
  }
}

/** Refusals that are answered with the page itself. */
const onThePage: readonly FailureCode[] = [
  'answer_not_offered',
  'bad_input',
  'form_expired',
  'form_incomplete',
  'spot_outside',
  'spot_without_photo',
  'too_many_spots',
]

/** The photos of one garment, to mark what must be cut around. */
export const spotsRoutes =
  (context: DeskContext): FastifyPluginAsyncZod =>
  async (app) => {
    const showPage = async (
      request: FastifyRequest,
      reply: FastifyReply,
      refused: Failure | null,
    ) => {
      // A form that is refused before it is read has not had its numbers read either.
      const { pile, n } = request.params as { pile: string; n: string | number }
      const { what } = (request.body ?? {}) as { what?: unknown }
      const found = await review(context.store.db, context.knowledge, pile)
      const page = spotsPage(found, Number(n), {
        language: deskLanguage(request, context),
        csrf: signedIn(request).csrf,
        refused,
        what: typeof what === 'string' && what !== '' ? what : null,
      })
      return showDesk(context, request, reply, page, {
        path: deskPaths.spots(found.row.number, Number(n)),
      })
    }

    const showRefused = async (error: unknown, request: FastifyRequest, reply: FastifyReply) => {
      const failure = asFailure(error)
      const shows = onThePage.includes(failure.code) && request.atDesk && wantsPage(request)
      if (!shows) throw error
      request.log.info({ code: failure.code }, 'mark refused')
      await showPage(request, reply.status(failure.status), failure)
    }

    app.get(
      '/piles/:pile/garments/:n/spots',
      {
        config: { who: staff },
        schema: { summary: "A garment's photos, to mark holes and stains on", params },
      },
      async (request, reply) => showPage(request, reply, null),
    )

    app.post(
      '/piles/:pile/garments/:n/spots',
      {
        config: { who: staff },
        schema: {
          summary: 'Marks a hole, a stain or a thin place, says where it lies, or takes it away',
          params,
          body: form,
        },
        errorHandler: showRefused,
      },
      async (request, reply) => {
        const { pile, n } = request.params
        const { id, number } = await pileAtDesk(context.store.db, pile)
        const who = signedIn(request).account.id
        await changeSpots(context, id, n, changeIn(request.body), who)
        return reply.redirect(deskPaths.spots(number, n), 303)
      },
    )
  }
