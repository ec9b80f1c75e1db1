import type { FastifyReply, FastifyRequest } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { Failure } from '../../base/failures.ts'
import { newId } from '../../base/ids.ts'
import { accountNames } from '../../desk/accounts.ts'
import { changedOf, pileOnceConfirmed } from '../../desk/agreement.ts'
import { counterPayment, takenKinds, takePayment } from '../../desk/take-payment.ts'
import { leavingsOf } from '../../intake/leaving.ts'
import { markedSteps, milestonesOf, reach, unreach } from '../../intake/milestones.ts'
import { offersOf } from '../../intake/offers.ts'
import { paymentsOf } from '../../intake/payments.ts'
import type { OfferPaper } from '../../papers/offer-paper.ts'
import { lockPile } from '../../store/rows.ts'
import { milestoneSteps } from '../../store/schema-agreement.ts'
import { asFailure, failureSentence, wantsPage } from '../errors.ts'
import { staff } from '../who.ts'
import { type DeskContext, deskLanguage } from './context.ts'
import { signedIn } from './guard.ts'
import { showDesk } from './page.ts'
import { deskPaths } from './paths.ts'
import { agreementPage, type DeskAgreement } from './present-agreement.ts'

const params = z.object({ pile: z.string().min(1).max(64) })
const paymentParams = params.extend({ payment: z.string().min(1).max(64) })

const idem = z
  .string()
  .regex(/^[\w-]{8,64}$/)
  .default(newId)
const csrf = z.string().max(200)
const text = z.string().max(100_000).default('')
const paymentForm = z.object({ csrf, idem, kind: z.enum(takenKinds), amount: text, how: text })
const counterForm = z.object({ csrf, idem, how: text })
const stepForm = z.object({
  csrf,
  step: z.enum(milestoneSteps),
  act: z.enum(['reach', 'unreach']).default('reach'),
})

/** What was agreed and paid; works for piles that their customers took back, too. */
export const agreementRoutes =
  (context: DeskContext): FastifyPluginAsyncZod =>
  async (app) => {
    const { store, knowledge, clock } = context
    const { db } = store

    const showAgreement = async (
      request: FastifyRequest,
      reply: FastifyReply,
      pile: string,
      refused: Pick<DeskAgreement, 'typed' | 'refusal'>,
    ) => {
      const row = await pileOnceConfirmed(db, pile)
      const page = agreementPage(
        {
          ...refused,
          row,
          offers: await offersOf<OfferPaper>(db, row.id, clock()),
          payments: await paymentsOf(db, row.id),
          names: await accountNames(db),
          milestones: await milestonesOf(db, row.id),
          marked: await markedSteps(db, row.id),
          leavings: await leavingsOf(db, row.id),
          changed: await changedOf(db, row.id),
          offering: null,
          currency: knowledge.shop.currency,
          csrf: signedIn(request).csrf,
          newIdem: newId,
        },
        deskLanguage(request, context),
      )
      return showDesk(context, request, reply, page)
    }

    /** A refusal is told on the page itself, what was typed still in it. */
    const showRefused = async (error: unknown, request: FastifyRequest, reply: FastifyReply) => {
      const failure = asFailure(error)
      const shows = failure.status === 409 || failure.status === 422
      if (!shows || !request.atDesk || !wantsPage(request)) throw error
      const { pile } = request.params as { pile: string }
      const sent = paymentForm.partial().safeParse(request.body)
      const { kind = 'deposit', amount = '', how = '' } = sent.success ? sent.data : {}
      reply.status(failure.status)
      const refusal = failureSentence(failure, deskLanguage(request, context))
      await showAgreement(request, reply, pile, { typed: { kind, amount, how }, refusal })
    }

    app.get(
      '/piles/:pile/agreement',
      { config: { who: staff }, schema: { summary: 'What was agreed and paid of a pile', params } },
      async (request, reply) =>
        showAgreement(request, reply, request.params.pile, { typed: null, refusal: null }),
    )

    app.post(
      '/piles/:pile/payments',
      {
        config: { who: staff },
        schema: {
          summary: 'Writes down money that came in or went back',
          params,
          body: paymentForm,
        },
        errorHandler: showRefused,
      },
      async (request, reply) => {
        const row = await pileOnceConfirmed(db, request.params.pile)
        const who = signedIn(request).account.id
        await takePayment(store, clock, knowledge, row.id, { ...request.body, who })
        request.log.info({ pile: row.number, kind: request.body.kind }, 'payment written down')
        return reply.redirect(deskPaths.agreement(row.number), 303)
      },
    )

    app.post(
      '/piles/:pile/payments/:payment/counter',
      {
        config: { who: staff },
        schema: { summary: 'Puts a payment right', params: paymentParams, body: counterForm },
        errorHandler: showRefused,
      },
      async (request, reply) => {
        const row = await pileOnceConfirmed(db, request.params.pile)
        const who = signedIn(request).account.id
        const { payment: id } = request.params
        await counterPayment(store, clock, knowledge, row.id, { ...request.body, id, who })
        request.log.info({ pile: row.number }, 'payment put right')
        return reply.redirect(deskPaths.agreement(row.number), 303)
      },
    )

    app.post(
      '/piles/:pile/milestones',
      {
        config: { who: staff },
        schema: { summary: 'Marks where a box and its quilt are', params, body: stepForm },
      },
      async (request, reply) => {
        const { id, number } = await pileOnceConfirmed(db, request.params.pile)
        const { step, act } = request.body
        const who = `staff:${signedIn(request).account.id}` as const
        await store.transaction(async (trx) => {
          const row = await lockPile(trx, id)
          if (!row || row.confirmed_at === null) throw new Failure('not_found')
          await (act === 'reach' ? reach : unreach)(trx, id, step, { who, at: clock() })
        })
        return reply.redirect(deskPaths.agreement(number), 303)
      },
    )
  }
