import type { FastifyReply, FastifyRequest } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { Failure } from '../../base/failures.ts'
import { atTheDesk } from '../../desk/decisions.ts'
import { pileAtDesk, type Review, review } from '../../desk/review.ts'
import { markSheet, readMarkedSheet, unmarkSheet } from '../../intake/sheet-marks.ts'
import { filledBy, type SheetFilled, sheetForm } from '../chat/sheet-form.ts'
import { cornersRefused } from '../chat/sheet-routes.ts'
import { staff } from '../who.ts'
import { type DeskContext, deskLanguage } from './context.ts'
import { signedIn } from './guard.ts'
import { showDesk } from './page.ts'
import { deskPaths } from './paths.ts'
import { sheetPage } from './present-sheet.ts'

const params = z.object({
  pile: z.string().min(1).max(64),
  n: z.coerce.number().int().min(1).max(100_000),
  id: z.string().regex(/^[\w-]{1,64}$/),
})

const form = sheetForm.extend({ csrf: z.string().max(200) })

interface Shown {
  readonly filled: SheetFilled | null
  readonly refused: Failure | null
}

/** Staff mark the four corners of a sheet on a garment's photo, or take marks back. */
export const sheetRoutes =
  (context: DeskContext): FastifyPluginAsyncZod =>
  async (app) => {
    const showPage = (
      request: FastifyRequest,
      reply: FastifyReply,
      found: Review,
      { n, id }: z.infer<typeof params>,
      shown: Shown,
    ) => {
      const page = sheetPage(found, n, id, {
        language: deskLanguage(request, context),
        csrf: signedIn(request).csrf,
        ...shown,
      })
      const path = deskPaths.sheet(found.row.number, n, id)
      return showDesk(context, request, reply, page, { path })
    }

    app.get(
      '/piles/:pile/garments/:n/photos/:id/sheet',
      {
        config: { who: staff },
        schema: { summary: "A garment's photo, to mark a sheet of paper on", params },
      },
      async (request, reply) => {
        const found = await review(context.store.db, context.knowledge, request.params.pile)
        return showPage(request, reply, found, request.params, { filled: null, refused: null })
      },
    )

    app.post(
      '/piles/:pile/garments/:n/photos/:id/sheet',
      {
        config: { who: staff },
        schema: {
          summary: 'Marks one corner more, measures by the four, or takes marks back',
          params,
          body: form,
        },
      },
      async (request, reply) => {
        const { params: at, body } = request
        const { db } = context.store
        const { id: pileId, number } = await pileAtDesk(db, at.pile)
        const found = await review(db, context.knowledge, at.pile)
        const picture = found.garments
          .find(({ garment }) => garment.n === at.n)
          ?.photos.find(({ id }) => id === at.id)
        if (!picture) throw new Failure('not_found')
        const filled = filledBy(body, picture.height / picture.width)
        const marker = { who: signedIn(request).account.id, mayIn: atTheDesk }
        const back = deskPaths.garment(number, at.n)
        try {
          if (body.act === 'take-back') {
            await unmarkSheet(context, pileId, at.id, marker)
            return await reply.redirect(back, 303)
          }
          if (body.act === 'measure') {
            await markSheet(context, pileId, at.id, readMarkedSheet(filled), marker)
            request.log.info({ sheet: filled.sheet }, 'a sheet was marked')
            return await reply.redirect(back, 303)
          }
        } catch (error) {
          if (!(error instanceof Failure) || !cornersRefused.includes(error.code)) throw error
          request.log.info({ code: error.code, sheet: filled.sheet }, 'a marked sheet was refused')
          return showPage(request, reply.status(error.status), found, at, {
            filled,
            refused: error,
          })
        }
        return showPage(request, reply, found, at, { filled, refused: null })
      },
    )
  }
