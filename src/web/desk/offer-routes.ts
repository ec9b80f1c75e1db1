import type { FastifyReply, FastifyRequest } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { Failure } from '../../base/failures.ts'
import { newId } from '../../base/ids.ts'
import { changedOf, type Offering, offeringOf } from '../../desk/agreement.ts'
import { careToTell } from '../../desk/care.ts'
import { isAccepted, offerWords, type Proposal, propose, sendOffer } from '../../desk/make-offer.ts'
import { readOffer, type TypedOffer } from '../../desk/offer-draft.ts'
import { planReviewed } from '../../desk/planned.ts'
import { type Review, review } from '../../desk/review.ts'
import { settled } from '../../desk/what-if.ts'
import type { FinishedCare } from '../../garment/finished-care.ts'
import { newestVersion } from '../../intake/agreement.ts'
import { offersOf } from '../../intake/offers.ts'
import { asPlanned } from '../../intake/planned.ts'
import { asFailure, failureSentence, wantsPage } from '../errors.ts'
import { staff } from '../who.ts'
import { type DeskContext, deskLanguage } from './context.ts'
import { signedIn } from './guard.ts'
import { showDesk } from './page.ts'
import { deskPaths } from './paths.ts'
import { type DeskOffer, deskOfferPage } from './present-offer.ts'

const params = z.object({ pile: z.string().min(1).max(64) })

const text = z.string().max(100_000).default('')
const many = z
  .union([z.string().max(100_000), z.array(z.string().max(100_000)).max(40)])
  .default([])
  .transform((one) => (typeof one === 'string' ? [one] : one))
const form = z.object({
  csrf: z.string().max(200),
  act: z.enum(['preview', 'send']).default('preview'),
  idem: z
    .string()
    .regex(/^[\w-]{8,64}$/)
    .default(newId),
  version: z.coerce.number().int().min(0).catch(0),
  seen: z.coerce.number().int().min(0).catch(0),
  /** The hash of the offer that the page showed; empty: it showed none. */
  shown: z.string().max(64).default(''),
  label: many,
  amount: many,
  reason: many,
  deposit: text,
  validDays: text,
  promised: text,
  overReason: text,
  note: text,
})
type Form = z.infer<typeof form>

const typedOf = ({ label, amount, reason, ...rest }: Form): TypedOffer => ({
  ...rest,
  amendments: label.map((one, i) => ({
    label: one,
    amount: amount[i] ?? '',
    reason: reason[i] ?? '',
  })),
})

/** So long an offer's page waits for the plan that its price is told from, ms. */
const patienceMs = 1200

/** To make an offer: everything is shown before it is sent. */
export const offerRoutes =
  (context: DeskContext): FastifyPluginAsyncZod =>
  async (app) => {
    const { store, knowledge, clock, plans } = context
    const { shop } = knowledge

    const load = async (pile: string) => {
      const found = await review(store.db, knowledge, pile)
      const { best } = await asPlanned(planReviewed(found), plans, { patienceMs })
      const offering = await offeringOf(store.db, shop.bench, clock(), found, best && settled(best))
      return { found, offering, care: careToTell(found.garments, best?.plan) }
    }

    const proposalOf = (
      typed: TypedOffer,
      found: Review,
      offering: Offering,
      care: FinishedCare,
    ): Proposal => {
      const draft = readOffer(typed, offering.estimate.currency, clock())
      const tax = shop.tax?.percent ?? null
      return propose(offering.estimate, found.pile.rates, tax, offering.room, draft, care)
    }

    const showOffer = async (
      request: FastifyRequest,
      reply: FastifyReply,
      { found, offering }: Awaited<ReturnType<typeof load>>,
      shown: Pick<DeskOffer, 'typed' | 'proposal' | 'idem'> & { readonly failure: Failure | null },
    ) => {
      const language = deskLanguage(request, context)
      const { proposal } = shown
      const page = deskOfferPage(
        {
          ...shown,
          review: found,
          offering,
          open: isAccepted(found.row, found.decisions),
          offers: await offersOf(store.db, found.row.id, clock()),
          changed: await changedOf(store.db, found.row.id),
          version: await newestVersion(store.db, found.row.id),
          csrf: signedIn(request).csrf,
          words: proposal ? offerWords(knowledge, found.row, found.pile, proposal, clock()) : {},
          refusal: shown.failure && failureSentence(shown.failure, language),
        },
        knowledge,
        language,
      )
      return showDesk(context, request, reply, page)
    }

    app.get(
      '/piles/:pile/offer',
      {
        config: { who: staff },
        schema: { summary: 'An offer, before it is sent', params },
      },
      async (request, reply) =>
        showOffer(request, reply, await load(request.params.pile), {
          typed: null,
          proposal: null,
          idem: newId(),
          failure: null,
        }),
    )

    app.post(
      '/piles/:pile/offer',
      {
        config: { who: staff },
        schema: { summary: 'Shows an offer whole, or sends it', params, body: form },
      },
      async (request, reply) => {
        const { body } = request
        const typed = typedOf(body)
        const loaded = await load(request.params.pile)
        const { found, offering, care } = loaded
        let proposal: Proposal | null = null
        try {
          if (!offering) throw new Failure('pile_not_accepted')
          proposal = proposalOf(typed, found, offering, care)
          if (body.act === 'preview') {
            const shown = { typed, proposal, idem: body.idem, failure: null }
            return await showOffer(request, reply, loaded, shown)
          }
          if (proposal.shown !== body.shown) throw new Failure('offer_not_shown')
          const sent = proposal
          const version = await sendOffer(store, clock, knowledge, found.row.id, {
            proposal: sent,
            words: (at) => offerWords(knowledge, found.row, found.pile, sent, at),
            seenVersion: body.version,
            seenDecision: body.seen,
            idem: body.idem,
            who: signedIn(request).account.id,
          })
          request.log.info({ pile: found.row.number, version }, 'offer sent')
          return reply.redirect(deskPaths.agreement(found.row.number), 303)
        } catch (error) {
          const failure = asFailure(error)
          if (failure.status >= 500 || failure.status === 404 || !wantsPage(request)) throw error
          reply.status(failure.status)
          return showOffer(request, reply, loaded, { typed, proposal, idem: body.idem, failure })
        }
      },
    )
  }
