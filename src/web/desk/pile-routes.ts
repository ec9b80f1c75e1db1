import type { FastifyReply, FastifyRequest } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import type { FailureCode } from '../../base/failures.ts'
import { newId } from '../../base/ids.ts'
import { decideGarment, decidePile, garmentVerdicts, pileVerdicts } from '../../desk/decisions.ts'
import { decideFlag } from '../../desk/flag-decisions.ts'
import { openCustody } from '../../desk/ledger.ts'
import { photoAtDesk } from '../../desk/message-photos.ts'
import { tellCustomer } from '../../desk/messages.ts'
import { settleNote } from '../../desk/notes.ts'
import { planReviewed } from '../../desk/planned.ts'
import { pileAtDesk, review } from '../../desk/review.ts'
import { asPlanned } from '../../intake/planned.ts'
import { asFailure, wantsPage } from '../errors.ts'
import { sendPhoto } from '../send-photo.ts'
import { staff, workshop } from '../who.ts'
import { agreeCardFor } from './agree-load.ts'
import { type DeskContext, deskLanguage } from './context.ts'
import { signedIn } from './guard.ts'
import { showDesk, waitingBeside } from './page.ts'
import { deskPaths } from './paths.ts'
import type { Refused } from './present-decision.ts'
import { pilePage } from './present-pile.ts'

const pileParams = z.object({ pile: z.string().min(1).max(64) })
const garmentParams = pileParams.extend({ n: z.coerce.number().int().min(1).max(100_000) })
const flagParams = garmentParams.extend({ flag: z.string().regex(/^[a-z][a-z0-9-]{0,63}$/) })
const noteParams = pileParams.extend({ note: z.string().min(1).max(64) })
const photoParams = pileParams.extend({
  id: z.string().min(1).max(64),
  size: z.enum(['view', 'thumb', 'cloth']),
})

const form = z.object({
  csrf: z.string().max(200),
  /** Why. The desk itself says how long it may be, so that what was typed is not lost. */
  reason: z.string().max(100_000).default(''),
  /** When the newest decision on the page was made; 0: there was none. */
  seen: z.coerce.number().int().min(0).default(0),
})
const garmentForm = form.extend({
  verdict: z.enum(garmentVerdicts),
  /** Asking: the reason is sent to the customer as a question. */
  send: z.literal('1').optional(),
})
const flagForm = z.object({
  csrf: z.string().max(200),
  verdict: z.enum(garmentVerdicts),
  reason: z.string().max(100_000).default(''),
  /** When the decision of this reason that the page showed was made; 0: it showed none. */
  knew: z.coerce.number().int().min(0).default(0),
})
const pileForm = form.extend({ verdict: z.enum(pileVerdicts) })
const settleForm = z.object({ csrf: z.string().max(200) })

/** Refusals that are answered with the page itself, what was typed still in it. */
const onThePage: readonly FailureCode[] = [
  'bad_input',
  'form_expired',
  'reason_missing',
  'answer_too_long',
  'decided_meanwhile',
  'garments_undecided',
  'pile_decided',
]

const reasonIn = (request: FastifyRequest): string => {
  const { reason } = (request.body ?? {}) as { reason?: unknown }
  return typeof reason === 'string' ? reason : ''
}

/** A pile is looked at more often than its plan: its page waits for one no longer than this. */
const patienceMs = 300

/** One pile: what the customer sent, and what staff say of it. */
export const pileRoutes =
  (context: DeskContext): FastifyPluginAsyncZod =>
  async (app) => {
    const { store, knowledge, clock, photos, plans } = context

    const showPile = async (
      request: FastifyRequest,
      reply: FastifyReply,
      pile: string,
      refused: Refused | null,
    ) => {
      const found = await review(store.db, knowledge, pile)
      const planned = await asPlanned(planReviewed(found), plans, { patienceMs })
      const waiting = await waitingBeside(context)
      const { csrf } = signedIn(request)
      const desk = {
        language: deskLanguage(request, context),
        csrf,
        seen: found.seen,
        refused,
      }
      const agree = await agreeCardFor(context, found, planned, desk.language)
      return showDesk(context, request, reply, pilePage(found, planned, waiting, desk, agree), {
        path: deskPaths.pile(found.row.number),
        counts: waiting.counts,
      })
    }

    const showRefused = async (error: unknown, request: FastifyRequest, reply: FastifyReply) => {
      const failure = asFailure(error)
      const shows = onThePage.includes(failure.code) && request.atDesk && wantsPage(request)
      if (!shows) throw error
      const { pile, n } = request.params as { pile: string; n?: string | number }
      reply.status(failure.status)
      const item = n === undefined ? null : Number(n)
      await showPile(request, reply, pile, { item, reason: reasonIn(request), failure })
    }

    app.get(
      '/piles/:pile',
      {
        config: { who: staff },
        schema: { summary: 'A pile with its garments, by number or id', params: pileParams },
      },
      async (request, reply) => showPile(request, reply, request.params.pile, null),
    )

    app.post(
      '/piles/:pile/garments/:n/decision',
      {
        config: { who: staff },
        schema: {
          summary: 'Decides of one garment',
          params: garmentParams,
          body: garmentForm,
        },
        errorHandler: showRefused,
      },
      async (request, reply) => {
        const { pile, n } = request.params
        const row = await pileAtDesk(store.db, pile)
        const who = signedIn(request).account.id
        const { verdict, send } = request.body
        const sends = verdict === 'ask' && send === '1'
        await decideGarment(
          store,
          clock,
          row.id,
          n,
          { ...request.body, who },
          async (trx, at, text) => {
            if (!sends) return
            const writing = { item: n, text, who, wantsAnswer: true, idem: newId() }
            await tellCustomer(trx, knowledge, at, writing, clock())
          },
        )
        return reply.redirect(deskPaths.garment(row.number, n), 303)
      },
    )

    app.post(
      '/piles/:pile/garments/:n/flags/:flag/decision',
      {
        config: { who: staff },
        schema: {
          summary: 'Decides of one reason of a garment',
          params: flagParams,
          body: flagForm,
        },
        errorHandler: showRefused,
      },
      async (request, reply) => {
        const { pile, n, flag } = request.params
        const row = await pileAtDesk(store.db, pile)
        const who = signedIn(request).account.id
        const { verdict, reason, knew } = request.body
        const deciding = { item: n, flag, verdict, reason, who, seen: knew }
        await decideFlag(store, clock, row.id, deciding)
        return reply.redirect(deskPaths.garment(row.number, n), 303)
      },
    )

    app.post(
      '/piles/:pile/decision',
      {
        config: { who: staff },
        schema: { summary: 'Decides of the whole pile', params: pileParams, body: pileForm },
        errorHandler: showRefused,
      },
      async (request, reply) => {
        const row = await pileAtDesk(store.db, request.params.pile)
        const who = signedIn(request).account.id
        await decidePile(store, clock, row.id, { ...request.body, who })
        if (request.body.verdict === 'accept') await openCustody({ store, clock }, row.id, who)
        return reply.redirect(deskPaths.pile(row.number), 303)
      },
    )

    app.post(
      '/piles/:pile/notes/:note/settle',
      {
        config: { who: staff },
        schema: {
          summary: "Marks a customer's question as seen to",
          params: noteParams,
          body: settleForm,
        },
      },
      async (request, reply) => {
        const { pile, note } = request.params
        const row = await pileAtDesk(store.db, pile)
        await settleNote(store, clock, row.id, note, signedIn(request).account.id)
        return reply.redirect(`${deskPaths.pile(row.number)}#note-${note}`, 303)
      },
    )

    app.get(
      '/piles/:pile/photos/:id/:size',
      { config: { who: workshop }, schema: { summary: 'A photo of a pile', params: photoParams } },
      async (request, reply) => {
        const { pile, id, size } = request.params
        return sendPhoto(photos, reply, { row: await photoAtDesk(store.db, pile, id), size })
      },
    )
  }
