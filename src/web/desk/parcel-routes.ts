import type { FastifyReply, FastifyRequest } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import type { Failure, FailureCode } from '../../base/failures.ts'
import { newId } from '../../base/ids.ts'
import {
  type Announcing,
  announce,
  arriveUnannounced,
  packHome,
  parcelsOf,
} from '../../desk/parcels.ts'
import { pileAtDesk } from '../../desk/review.ts'
import { leftoversTold, signOff, signOffOf, undoSignOff } from '../../desk/sign-off.ts'
import { locatedOf, placesUsed } from '../../desk/whereabouts.ts'
import { asFailure, wantsPage } from '../errors.ts'
import { staff, workshop } from '../who.ts'
import { type DeskContext, deskLanguage } from './context.ts'
import { custodyPaths } from './custody-paths.ts'
import { conditionWords } from './custody-words.ts'
import { signedIn } from './guard.ts'
import { showDesk } from './page.ts'
import { custodyPilePage } from './present-custody-pile.ts'

const params = z.object({ pile: z.string().min(1).max(64) })
const line = z.string().max(10_000).default('')
/** "2026-06-01" as milliseconds UTC; empty: not told. */
const day = z
  .union([z.literal(''), z.iso.date()])
  .default('')
  .transform((text) => (text === '' ? null : Date.parse(text)))
const money = z
  .union([z.literal('').transform(() => null), z.coerce.number().min(0).max(1_000_000)])
  .default(null)
  .transform((amount) => (amount === null ? null : Math.round(amount * 100)))
const idem = z
  .string()
  .regex(/^[\w-]{8,64}$/)
  .optional()
  .transform((sent) => sent ?? newId())
const ticked = z
  .union([z.string().max(20), z.array(z.string().max(20)).max(12)])
  .optional()
  .transform((sent) => (sent === undefined ? [] : [sent].flat()))

const form = z.object({
  csrf: z.string().max(200),
  act: z.enum(['announce', 'door', 'pack']),
  carrier: line,
  tracking: line,
  insured: money,
  posted: day,
  expected: day,
  condition: ticked,
  place: line,
  idem,
})

const signForm = z.object({
  csrf: z.string().max(200),
  act: z.enum(['sign', 'undo']),
  leftovers: z.string().max(40).default(''),
})

/** Refusals that are answered with the page itself. */
const onThePage: readonly FailureCode[] = [
  'answer_not_offered',
  'answer_too_long',
  'bad_input',
  'decided_meanwhile',
  'form_expired',
  'move_not_now',
  'moved_meanwhile',
  'none_with_others',
  'nothing_sewn',
  'nothing_ticked',
  'number_out_of_range',
  'place_missing',
  'undo_not_now',
]

const typedIn = (request: FastifyRequest): Record<string, string> =>
  Object.fromEntries(
    Object.entries((request.body ?? {}) as object).map(([name, value]) => [name, String(value)]),
  )

/** The parcels of a pile, and the quilt's sign-off. */
export const parcelRoutes =
  (context: DeskContext): FastifyPluginAsyncZod =>
  async (app) => {
    const { store, clock, knowledge } = context
    const at = { store, clock }

    const show = async (request: FastifyRequest, reply: FastifyReply, refused: Failure | null) => {
      const { pile } = request.params as z.infer<typeof params>
      const row = await pileAtDesk(store.db, pile)
      const session = signedIn(request)
      const page = custodyPilePage(
        {
          row,
          all: await locatedOf(store.db, row.id),
          parcels: await parcelsOf(store.db, row.id),
          signOff: await signOffOf(store.db, row.id),
          leftovers: await leftoversTold(store.db, knowledge, row),
          currency: knowledge.shop.currency,
        },
        {
          language: deskLanguage(request, context),
          csrf: session.csrf,
          staff: staff.includes(session.account.role),
          places: await placesUsed(store.db),
          refused,
          typed: refused ? typedIn(request) : {},
        },
      )
      return showDesk(context, request, reply, page, { path: custodyPaths.pile(row.number) })
    }

    const errorHandler = async (error: unknown, request: FastifyRequest, reply: FastifyReply) => {
      const failure = asFailure(error)
      const shows = onThePage.includes(failure.code) && request.atDesk && wantsPage(request)
      if (!shows) throw error
      request.log.info({ code: failure.code }, 'parcel refused')
      await show(request, reply.status(failure.status), failure)
    }

    app.get(
      '/piles/:pile/custody',
      { config: { who: workshop }, schema: { summary: 'Where everything of a pile is', params } },
      async (request, reply) => show(request, reply, null),
    )

    app.post(
      '/piles/:pile/parcels',
      {
        config: { who: workshop },
        schema: { summary: 'Announces a parcel, or says that one is here', params, body: form },
        errorHandler,
      },
      async (request, reply) => {
        const row = await pileAtDesk(store.db, request.params.pile)
        const { act, carrier, tracking, insured, posted, expected, condition, place, idem } =
          request.body
        const who = signedIn(request).account.id
        const { say } = deskLanguage(request, context)
        const announcing: Announcing = {
          carrier,
          tracking,
          insured,
          postedAt: posted,
          expectedAt: expected,
          who,
          idem,
        }
        const tell = (found: Parameters<typeof conditionWords>[0]) => conditionWords(found, say)
        if (act === 'announce') await announce(at, knowledge.shop, row.id, announcing)
        else if (act === 'pack') await packHome(at, row.id, announcing, place)
        else {
          const arriving = { condition, place, note: '', tell, who }
          await arriveUnannounced(at, knowledge.shop, row.id, announcing, arriving)
        }
        request.log.info({ pile: row.number, act }, 'parcel kept')
        return reply.redirect(custodyPaths.pile(row.number), 303)
      },
    )

    app.post(
      '/piles/:pile/sign-off',
      {
        config: { who: staff },
        schema: {
          summary: 'The quilt is done and the customer said yes; or that is taken back',
          params,
          body: signForm,
        },
        errorHandler,
      },
      async (request, reply) => {
        const row = await pileAtDesk(store.db, request.params.pile)
        const who = signedIn(request).account.id
        const { act, leftovers } = request.body
        if (act === 'sign') await signOff(at, row.id, { leftovers, note: '', who })
        else await undoSignOff(at, row.id, who)
        request.log.info({ pile: row.number, act }, 'sign-off')
        return reply.redirect(custodyPaths.pile(row.number), 303)
      },
    )
  }
