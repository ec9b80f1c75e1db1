import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import { z } from 'zod'
import { Failure } from '../../base/failures.ts'
import { newId } from '../../base/ids.ts'
import { acceptAndTell } from '../../desk/accept-offer.ts'
import { hasLeftHome, milestonesOf } from '../../intake/milestones.ts'
import { offersOf, promiseOf } from '../../intake/offers.ts'
import { paymentsOf } from '../../intake/payments.ts'
import type { OfferPaper } from '../../papers/offer-paper.ts'
import { asFailure, failureSentence, wantsPage } from '../errors.ts'
import { customer } from '../who.ts'
import type { ChatContext } from './context.ts'
import { buttonForm } from './form.ts'
import { keyParams, type Opened, openPile, show } from './opened.ts'
import { paths } from './paths.ts'
import { offerPage, type RefusedYes, receiptPage } from './present-offer.ts'
import type { LeavePage } from './view-status.ts'

const number = z.coerce.number().int().min(1).max(2_000_000_000)
const offerParams = keyParams.extend({ version: number })
const receiptParams = keyParams.extend({ number })

const yesForm = z.object({
  hash: z.string().max(64).default(''),
  name: z.string().max(100_000).default(''),
  agree: z.string().max(10).optional(),
})

const leaveForm = buttonForm.extend({ reason: z.string().max(100_000).default('') })

/** The offer, the customer's yes, receipts, and the ways to take a pile back. */
export function agreementRoutes(app: FastifyInstance, context: ChatContext): void {
  const { store, clock, knowledge, conversation } = context

  const showOffer = async (
    reply: FastifyReply,
    { key, open, language }: Opened,
    version: number,
    refused: RefusedYes | null,
  ) => {
    const offers = await offersOf<OfferPaper>(store.db, open.row.id, clock())
    const offer = offers.find(({ row }) => row.version === version)
    if (!offer) throw new Failure('not_found')
    const shown = { key, language, pile: open.row, offers, refused }
    return show(context, reply, offerPage(offer, shown), { language, key })
  }

  app.get<{ Params: z.infer<typeof offerParams> }>(
    '/i/:key/offer/:version',
    {
      config: { who: customer },
      schema: { summary: 'An offer, word for word as it was sent', params: offerParams },
    },
    async (request, reply) => {
      const { key, version } = request.params
      return showOffer(reply, await openPile(context, key), version, null)
    },
  )

  app.post<{ Params: z.infer<typeof offerParams>; Body: z.infer<typeof yesForm> }>(
    '/i/:key/offer/:version/accept',
    {
      config: { who: customer },
      schema: { summary: "The customer's yes to an offer", params: offerParams, body: yesForm },
    },
    async (request, reply) => {
      const { key, version } = request.params
      const { hash, name, agree } = request.body
      const ticked = agree !== undefined
      try {
        await acceptAndTell(store, clock, knowledge, key, { version, hash, name, agreed: ticked })
      } catch (error) {
        const failure = asFailure(error)
        if (failure.status >= 500 || failure.status === 404 || !wantsPage(request)) throw error
        reply.status(failure.status)
        const opened = await openPile(context, key)
        return showOffer(reply, opened, version, { failure, name, ticked })
      }
      request.log.info({ version }, 'offer accepted')
      return reply.redirect(paths.pile(key), 303)
    },
  )

  app.get<{ Params: z.infer<typeof receiptParams> }>(
    '/i/:key/receipts/:number',
    { config: { who: customer }, schema: { summary: 'A receipt', params: receiptParams } },
    async (request, reply) => {
      const { key, open, language } = await openPile(context, request.params.key)
      const payments = await paymentsOf(store.db, open.row.id)
      const payment = payments.find(({ receipt }) => receipt === request.params.number)
      if (!payment) throw new Failure('not_found')
      const shown = { key, language, shop: knowledge.shop, pile: open.row, payments }
      return show(context, reply, receiptPage(payment, shown), { language, key })
    },
  )

  const leavePage = async (
    kind: LeavePage['kind'],
    { key, open, language }: Opened,
    typed: { readonly reason: string; readonly refusal: string | null },
  ): Promise<LeavePage> => {
    const { say } = language
    const offers = await offersOf(store.db, open.row.id, clock())
    const isLate = hasLeftHome(await milestonesOf(store.db, open.row.id))
    const promised = promiseOf(offers) !== undefined
    const about = kind === 'withdraw' && isLate ? 'late' : kind
    return {
      page: 'leave',
      kind,
      lines: [
        say(`leave.${about}.what`),
        ...(promised && !isLate ? [say(`leave.${kind}.promised`)] : []),
        say(`leave.${about}.then`),
      ],
      postTo: kind === 'change' ? paths.change(key) : paths.withdraw(key),
      hidden: { idem: newId(), seq: String(open.row.seq) },
      reason: kind === 'change' ? null : typed.reason,
      refusal: typed.refusal,
      backHref: paths.pile(key),
    }
  }

  /** An open pile is changed by its own pages, and one that is withdrawn not any more. */
  const may = (kind: LeavePage['kind'], { open: { row } }: Opened) =>
    row.status === 'confirmed' ||
    row.status === 'decided' ||
    (kind === 'withdraw' && row.status === 'open' && row.confirmed_at !== null)

  const showLeave = async (
    request: FastifyRequest<{ Params: z.infer<typeof keyParams> }>,
    reply: FastifyReply,
    kind: LeavePage['kind'],
  ) => {
    const opened = await openPile(context, request.params.key)
    if (!may(kind, opened)) return reply.redirect(paths.pile(opened.key), 303)
    const page = await leavePage(kind, opened, { reason: '', refusal: null })
    return show(context, reply, page, { language: opened.language, key: opened.key })
  }

  app.get<{ Params: z.infer<typeof keyParams> }>(
    '/i/:key/change',
    {
      config: { who: customer },
      schema: { summary: 'Before a confirmed pile is changed', params: keyParams },
    },
    async (request, reply) => showLeave(request, reply, 'change'),
  )

  app.get<{ Params: z.infer<typeof keyParams> }>(
    '/i/:key/withdraw',
    {
      config: { who: customer },
      schema: { summary: 'Before a confirmed pile is withdrawn', params: keyParams },
    },
    async (request, reply) => showLeave(request, reply, 'withdraw'),
  )

  app.post<{ Params: z.infer<typeof keyParams>; Body: z.infer<typeof buttonForm> }>(
    '/i/:key/change',
    {
      config: { who: customer },
      schema: { summary: 'Opens a confirmed pile again', params: keyParams, body: buttonForm },
    },
    async (request, reply) => {
      const { key } = request.params
      await conversation.reopen(key, request.body.idem)
      request.log.info('pile reopened by its customer')
      return reply.redirect(paths.pile(key), 303)
    },
  )

  app.post<{ Params: z.infer<typeof keyParams>; Body: z.infer<typeof leaveForm> }>(
    '/i/:key/withdraw',
    {
      config: { who: customer },
      schema: { summary: 'Takes a confirmed pile back', params: keyParams, body: leaveForm },
    },
    async (request, reply) => {
      const { key } = request.params
      const { idem, reason } = request.body
      try {
        await conversation.withdraw(key, idem, reason)
      } catch (error) {
        const failure = asFailure(error)
        if (failure.code !== 'answer_too_long' || !wantsPage(request)) throw error
        const opened = await openPile(context, key)
        const refusal = failureSentence(failure, opened.language)
        const page = await leavePage('withdraw', opened, { reason, refusal })
        reply.status(failure.status)
        return show(context, reply, page, { language: opened.language, key })
      }
      request.log.info('pile withdrawn by its customer')
      return reply.redirect(paths.pile(key), 303)
    },
  )
}
