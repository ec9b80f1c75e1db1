import type { FastifyReply, FastifyRequest } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { Failure, type FailureCode } from '../../base/failures.ts'
import { factSetsOf, newestSet } from '../../desk/fact-sets.ts'
import { pileAtDesk, type Review, type ReviewedGarment, review } from '../../desk/review.ts'
import { setFacts, undoFact } from '../../desk/set-facts.ts'
import { tryFacts } from '../../desk/try-facts.ts'
import { nameOf } from '../chat/present-garment.ts'
import { asFailure, failureSentence, wantsPage } from '../errors.ts'
import { staff } from '../who.ts'
import { type DeskContext, deskLanguage } from './context.ts'
import { signedIn } from './guard.ts'
import { showDesk } from './page.ts'
import { deskPaths } from './paths.ts'
import { chosenFacts, factsPage, standingValues } from './present-facts.ts'
import { readerAt } from './present-garment.ts'

const params = z.object({
  pile: z.string().min(1).max(64),
  n: z.coerce.number().int().min(1).max(100_000),
})
const csrf = z.string().max(200)
const chosen = Object.fromEntries(
  chosenFacts.map((fact) => [fact, z.string().max(64).optional()] as const),
)
const form = z.object({
  csrf,
  act: z.enum(['try', 'save']).default('try'),
  seen: z.coerce.number().int().min(0).default(0),
  reason: z.string().max(100_000).default(''),
  ...chosen,
})
const undoForm = z.object({ csrf, set: z.string().min(1).max(64) })

/** Refusals that are answered with the page itself, what was chosen and typed still in it. */
const onThePage: readonly FailureCode[] = [
  'answer_not_offered',
  'answer_too_long',
  'bad_input',
  'decided_meanwhile',
  'form_expired',
  'reason_missing',
]

function garmentIn({ garments }: Review, n: number): ReviewedGarment {
  const found = garments.find(({ garment }) => garment.n === n)
  if (!found) throw new Failure('not_found')
  return found
}

/** What a form chose otherwise than it stands. */
function changed(body: unknown, reviewed: ReviewedGarment): Record<string, string> {
  const sent = (body ?? {}) as Record<string, unknown>
  return Object.fromEntries(
    [...standingValues(reviewed)].flatMap(([fact, stands]) => {
      const value = sent[fact]
      return typeof value === 'string' && value !== stands ? [[fact, value]] : []
    }),
  )
}

const text = (value: unknown): string => (typeof value === 'string' ? value : '')

/** Facts of a garment that staff know better. */
export const factsRoutes =
  (context: DeskContext): FastifyPluginAsyncZod =>
  async (app) => {
    const { store, knowledge } = context

    const showPage = async (
      request: FastifyRequest,
      reply: FastifyReply,
      { failure, isTried = false }: { failure?: Failure; isTried?: boolean } = {},
    ) => {
      const { pile, n } = request.params as { pile: string; n: string | number }
      const found = await review(store.db, knowledge, pile)
      const reviewed = garmentIn(found, Number(n))
      const all = await factSetsOf(store.db, found.row.id)
      const sets = all.filter(({ item }) => item === reviewed.garment.n)
      const wanted = changed(request.body, reviewed)
      const language = deskLanguage(request, context)
      const tried = isTried
        ? await tryFacts(store.db, knowledge, found, reviewed.garment.n, wanted)
        : null
      const page = factsPage(
        {
          number: found.row.number,
          reviewed,
          sets,
          seen: newestSet(all, reviewed.garment.n),
          wanted,
          reason: text((request.body as { reason?: unknown } | undefined)?.reason),
          csrf: signedIn(request).csrf,
          error: failure ? failureSentence(failure, language) : null,
          tried,
        },
        nameOf(reviewed.garment, readerAt(language)),
        language,
      )
      return showDesk(context, request, reply, page, {
        path: deskPaths.facts(found.row.number, reviewed.garment.n),
      })
    }

    const showRefused = async (error: unknown, request: FastifyRequest, reply: FastifyReply) => {
      const failure = asFailure(error)
      const shows = onThePage.includes(failure.code) && request.atDesk && wantsPage(request)
      if (!shows) throw error
      await showPage(request, reply.status(failure.status), { failure })
    }

    app.get(
      '/piles/:pile/garments/:n/facts',
      {
        config: { who: staff },
        schema: { summary: 'What is known of a garment, to set right', params },
      },
      async (request, reply) => showPage(request, reply),
    )

    app.post(
      '/piles/:pile/garments/:n/facts',
      {
        config: { who: staff },
        schema: {
          summary: 'Sets facts of a garment with a reason, or shows what that would do',
          params,
          body: form,
        },
        errorHandler: showRefused,
      },
      async (request, reply) => {
        const { pile, n } = request.params
        const { act, reason, seen } = request.body
        if (act === 'try') return showPage(request, reply, { isTried: true })
        const found = await review(store.db, knowledge, pile)
        await setFacts(context, found.row.id, {
          item: n,
          facts: changed(request.body, garmentIn(found, n)),
          source: 'staff',
          reason,
          who: signedIn(request).account.id,
          seen,
        })
        request.log.info({ pile: found.row.number, garment: n }, 'facts set')
        return reply.redirect(deskPaths.garment(found.row.number, n), 303)
      },
    )

    app.post(
      '/piles/:pile/garments/:n/facts/undo',
      {
        config: { who: staff },
        schema: { summary: 'Undoes a fact that was set', params, body: undoForm },
      },
      async (request, reply) => {
        const { pile, n } = request.params
        const row = await pileAtDesk(store.db, pile)
        const { set } = request.body
        const sets = await factSetsOf(store.db, row.id)
        if (!sets.some(({ id, item }) => id === set && item === n)) throw new Failure('not_found')
        await undoFact(context, row.id, set, signedIn(request).account.id)
        return reply.redirect(deskPaths.facts(row.number, n), 303)
      },
    )
  }
