import type { FastifyReply, FastifyRequest } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { Failure, type FailureCode } from '../../base/failures.ts'
import { pileAtDesk, review } from '../../desk/review.ts'
import { newestAtDesk, takeUp } from '../../desk/take-up.ts'
import { mostTries, readTry, tryText } from '../../desk/tries.ts'
import { asFailure, failureSentence, wantsPage } from '../errors.ts'
import { staff } from '../who.ts'
import { type DeskContext, deskLanguage } from './context.ts'
import { signedIn } from './guard.ts'
import { showDesk } from './page.ts'
import { deskPaths } from './paths.ts'
import { whatIfPage } from './present-what-if.ts'

const params = z.object({ pile: z.string().min(1).max(64) })

/** One of a name, or several; more than are looked at are left. */
const texts = (most: number) =>
  z
    .union([z.string().transform((one) => [one]), z.array(z.string())])
    .catch([])
    .transform((all) => all.slice(0, most))

const query = z.object({
  try: texts(2 * mostTries).default([]),
  /** A further way, as the form sends it: what it begins with, changes, and the roles of one garment. */
  from: z.string().max(1000).catch('').default(''),
  and: texts(12).default([]),
  of: z.string().max(10).catch('').default(''),
  plays: texts(3).default([]),
  add: z.string().max(10).optional().catch(undefined),
  lang: z.string().max(8).optional(),
})

/** The way that a form describes, as an address tells of it; empty: nothing was chosen. */
function described({ from, and, of, plays }: z.infer<typeof query>): string {
  const roles = of === '' ? '' : ['roles', of, ...(plays.length > 0 ? plays : ['any'])].join(':')
  const parts = [from, ...and, roles].filter((part) => part !== '')
  const changes = readTry(parts.join(','))
  return changes ? tryText(changes) : parts.join(',')
}

const takeUpForm = z.object({
  csrf: z.string().max(200),
  way: z.string().max(400),
  reason: z.string().max(100_000).default(''),
  seen: z.coerce.number().int().min(0).default(0),
})

/** Refusals that are answered with the page itself. */
const onThePage: readonly FailureCode[] = [
  'answer_too_long',
  'bad_input',
  'decided_meanwhile',
  'form_expired',
  'pile_decided',
  'reason_missing',
  'way_not_real',
]

/** Plans are waited for so long. */
const patienceMs = 2500

/** A pile beside other ways to make its quilt. */
export const whatIfRoutes =
  (context: DeskContext): FastifyPluginAsyncZod =>
  async (app) => {
    const showWays = async (
      request: FastifyRequest,
      reply: FastifyReply,
      tries: readonly string[],
      refused: { readonly failure: Failure; readonly reason: string } | null,
    ) => {
      const { store, knowledge, plans } = context
      const { pile } = request.params as { pile: string }
      const language = deskLanguage(request, context)
      const found = await review(store.db, knowledge, pile)
      const trying = { plans, layouts: knowledge.layouts, patienceMs }
      const { number } = found.row
      const page = await whatIfPage(found, tries, trying, language, {
        postTo: deskPaths.whatIf(number),
        csrf: signedIn(request).csrf,
        seen: await newestAtDesk(store.db, found.row.id),
        reason: refused?.reason ?? '',
        error: refused && failureSentence(refused.failure, language),
      })
      return showDesk(context, request, reply, page, { path: deskPaths.whatIf(number, tries) })
    }

    /** The way that was to be taken up stands beside the pile still, with the reason that was typed. */
    const showRefused = async (error: unknown, request: FastifyRequest, reply: FastifyReply) => {
      const failure = asFailure(error)
      const shows = onThePage.includes(failure.code) && request.atDesk && wantsPage(request)
      if (!shows) throw error
      const sent = (request.body ?? {}) as { way?: unknown; reason?: unknown }
      const text = (value: unknown) => (typeof value === 'string' ? value.slice(0, 2000) : '')
      const tries = text(sent.way) === '' ? [] : [text(sent.way)]
      const refused = { failure, reason: text(sent.reason) }
      await showWays(request, reply.status(failure.status), tries, refused)
    }

    app.get(
      '/piles/:pile/what-if',
      {
        config: { who: staff },
        schema: { summary: 'A pile beside other ways', params, querystring: query },
      },
      async (request, reply) => {
        const { store } = context
        const { try: tries, add } = request.query
        if (add !== undefined) {
          const { number } = await pileAtDesk(store.db, request.params.pile)
          const further = described(request.query)
          const all = further === '' ? tries : [...tries, further]
          return reply.redirect(deskPaths.whatIf(number, all), 303)
        }
        return showWays(request, reply, tries, null)
      },
    )

    app.post(
      '/piles/:pile/what-if',
      {
        config: { who: staff },
        schema: { summary: "Makes one of the ways the pile's own", params, body: takeUpForm },
        errorHandler: showRefused,
      },
      async (request, reply) => {
        const { way, reason, seen } = request.body
        const { id, number } = await pileAtDesk(context.store.db, request.params.pile)
        const changes = readTry(way)
        if (!changes) throw new Failure('bad_input')
        const who = signedIn(request).account.id
        await takeUp(context, id, { changes, reason, who, seen })
        request.log.info({ pile: number, way: tryText(changes) }, 'way taken up')
        return reply.redirect(deskPaths.pile(number), 303)
      },
    )
  }
