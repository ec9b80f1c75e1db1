import type { FastifyReply, FastifyRequest } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { Failure, type FailureCode } from '../../base/failures.ts'
import { keepPiece, layAnew, letGo, swapPieces, type Touch } from '../../desk/arrange.ts'
import { planReviewed } from '../../desk/planned.ts'
import { type Review, review } from '../../desk/review.ts'
import { asPlanned } from '../../intake/planned.ts'
import { drawnOrFail } from '../chat/quilts.ts'
import { asFailure, wantsPage } from '../errors.ts'
import { staff } from '../who.ts'
import { type DeskContext, deskLanguage } from './context.ts'
import { signedIn } from './guard.ts'
import { showDesk } from './page.ts'
import { deskPaths } from './paths.ts'
import { arrangePage } from './present-arrange.ts'
import type { ArrangeWish } from './present-arrange-pieces.ts'
import { reviewedQuilts } from './present-plan-quilt.ts'

const fromOne = z
  .string()
  .regex(/^[1-9]\d{0,4}$/)
  .transform(Number)

const params = z.object({ pile: z.string().min(1).max(64), quilt: fromOne })

/** What an address asks for that cannot be is passed over. */
const asked = fromOne.optional().catch(undefined)
const query = z.object({
  piece: asked,
  with: asked,
  /** "3-8": two that have just changed places. */
  moved: z
    .string()
    .regex(/^[1-9]\d{0,4}-[1-9]\d{0,4}$/)
    .transform((pair) => {
      const [one, other] = pair.split('-').map(Number)
      return [one!, other!] as const
    })
    .optional()
    .catch(undefined),
  lang: z.string().max(8).optional(),
})

const shown = {
  csrf: z.string().max(200),
  shown: z.string().max(64),
  seen: z.coerce.number().int().min(0),
}
const form = z.discriminatedUnion('act', [
  z.object({ act: z.literal('swap'), a: fromOne, b: fromOne, ...shown }),
  z.object({ act: z.literal('keep'), piece: fromOne, ...shown }),
  z.object({ act: z.literal('release'), pin: z.string().min(1).max(64), ...shown }),
  z.object({ act: z.enum(['rest', 'anew']), ...shown }),
])
type Form = z.infer<typeof form>

/** Refusals that are answered with the page itself, as the quilt lies now. */
const onThePage: readonly FailureCode[] = [
  'decided_meanwhile',
  'form_expired',
  'pieces_unlike',
  'quilt_changed',
]

/** What was chosen when a form was sent, whether it has been read or not. */
function chosenIn(body: unknown): ArrangeWish {
  const { a, b, piece } = (body ?? {}) as Record<string, unknown>
  const text = (one: unknown) => (one === undefined ? undefined : String(one))
  return query.pick({ piece: true, with: true }).parse({ piece: text(a ?? piece), with: text(b) })
}

/** A laid quilt whose pieces staff move, pin and let go. */
export const arrangeRoutes =
  (context: DeskContext): FastifyPluginAsyncZod =>
  async (app) => {
    const { store, knowledge, plans } = context

    const found = async (pile: string, quilt: number): Promise<Review> => {
      const reviewed = await review(store.db, knowledge, pile)
      if (quilt < 1 || quilt > reviewed.pile.wish.quilts) throw new Failure('not_found')
      return reviewed
    }

    const showPage = async (
      request: FastifyRequest,
      reply: FastifyReply,
      { pile, quilt }: z.infer<typeof params>,
      wish: ArrangeWish,
      refused: Failure | null = null,
    ) => {
      const reviewed = await found(pile, quilt)
      const language = deskLanguage(request, context)
      const reader = { review: reviewed, csrf: signedIn(request).csrf, language }
      const page = await arrangePage(reader, context, quilt, wish, refused)
      if (refused) reply.status(refused.status)
      else if (page.state === 'failed') reply.status(503)
      const path = deskPaths.arrange(reviewed.row.number, quilt)
      return showDesk(context, request, reply, page, refused ? { path } : {})
    }

    const showRefused = async (error: unknown, request: FastifyRequest, reply: FastifyReply) => {
      const failure = asFailure(error)
      const shows = onThePage.includes(failure.code) && request.atDesk && wantsPage(request)
      if (!shows) throw error
      // A form that is refused before it is read has not had its numbers read either.
      const { pile, quilt } = request.params as { pile: string; quilt: string | number }
      const place = params.safeParse({ pile, quilt: String(quilt) }).data
      if (!place) throw new Failure('not_found', {}, { cause: error })
      await showPage(request, reply, place, chosenIn(request.body), failure)
    }

    /** Where the page goes on when a form has been taken. */
    const onward = (number: number, quilt: number, body: Form): string => {
      const path = deskPaths.arrange(number, quilt)
      if (body.act === 'swap') return `${path}?moved=${body.a}-${body.b}#chosen`
      if (body.act === 'keep') return `${path}?piece=${body.piece}#chosen`
      return `${path}#chosen`
    }

    const take = async (hand: Touch, pileId: string, body: Form): Promise<void> => {
      switch (body.act) {
        case 'swap':
          return swapPieces(context, pileId, hand, [body.a - 1, body.b - 1])
        case 'keep':
          return keepPiece(context, pileId, hand, body.piece - 1)
        case 'release':
          return letGo(context, pileId, hand, body.pin)
        default:
          return layAnew(context, pileId, hand, { all: body.act === 'anew' })
      }
    }

    app.get(
      // The picture of a quilt, to save, stands beside it: a number alone is the page.
      '/piles/:pile/quilt/:quilt(^\\d{1,5}$)',
      {
        config: { who: staff },
        schema: { summary: 'A laid quilt, to move its pieces', params, querystring: query },
      },
      async (request, reply) => showPage(request, reply, request.params, request.query),
    )

    app.post(
      '/piles/:pile/quilt/:quilt',
      {
        config: { who: staff },
        schema: { summary: 'Moves, pins or lets go of pieces of a quilt', params, body: form },
        errorHandler: showRefused,
      },
      async (request, reply) => {
        const { pile, quilt } = request.params
        const { body } = request
        const reviewed = await found(pile, quilt)
        const planned = await asPlanned(planReviewed(reviewed), plans)
        const soFar = await reviewedQuilts(context, reviewed, planned)
        drawnOrFail(soFar)
        const lying = soFar.laid[quilt - 1]
        if (!lying) throw new Failure('not_found')
        const hand = {
          quilt: quilt - 1,
          lying,
          who: signedIn(request).account.id,
          shown: body.shown,
          seen: body.seen,
        }
        const { id, number } = reviewed.row
        await take(hand, id, body)
        return reply.redirect(onward(number, quilt, body), 303)
      },
    )
  }
