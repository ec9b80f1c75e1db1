import type { FastifyReply, FastifyRequest } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { Failure, type FailureCode } from '../../base/failures.ts'
import { draftFile } from '../../desk/draft-files.ts'
import { withShopChange } from '../../desk/shop-draft.ts'
import { asFailure, failureSentence, wantsPage } from '../errors.ts'
import { owner } from '../who.ts'
import { type DeskContext, deskLanguage } from './context.ts'
import { draftTries } from './draft-routes.ts'
import { signedIn } from './guard.ts'
import { showDesk } from './page.ts'
import { deskPaths } from './paths.ts'
import { shopPage } from './present-shop.ts'
import { type ShopTyped, shopChange, shopTyped } from './shop-form.ts'

const file = 'shop.yaml'

const onThePage: readonly FailureCode[] = [
  'bad_input',
  'form_expired',
  'file_too_long',
  'shop_incomplete',
]

/** Fields are named by the shop's languages; what is no text is none of ours. */
const form = z.record(z.string().max(40), z.string().max(8_000)).default({})

const typedIn = (body: unknown): ShopTyped =>
  Object.fromEntries(
    Object.entries((body ?? {}) as Record<string, unknown>).flatMap(([name, value]) =>
      typeof value === 'string' ? [[name, value.replaceAll('\r\n', '\n').trim()]] : [],
    ),
  )

/** The shop's name, contact, policies and look, for the owner: changed, seen, and kept as a draft of `shop.yaml`. */
export const shopRoutes =
  (context: DeskContext): FastifyPluginAsyncZod =>
  async (app) => {
    const { knowledge, live, drafts } = context
    const { shop } = knowledge

    const show = (
      request: FastifyRequest,
      reply: FastifyReply,
      typed: ShopTyped,
      error: string | null = null,
    ) =>
      showDesk(
        context,
        request,
        reply,
        shopPage(typed, {
          shop,
          language: deskLanguage(request, context),
          csrf: signedIn(request).csrf,
          error,
        }),
        { path: deskPaths.shop },
      )

    app.get(
      '/shop',
      { config: { who: owner }, schema: { summary: 'The shop as customers see it' } },
      async (request, reply) => show(request, reply, shopTyped(shop)),
    )

    app.post(
      '/shop',
      {
        config: { who: owner, rateLimit: { ...draftTries, hook: 'preHandler' } },
        schema: { summary: 'Shows a changed shop, or keeps it as a draft', body: form },
        errorHandler: async (error, request, reply) => {
          const failure = asFailure(error)
          const shows = onThePage.includes(failure.code) && request.atDesk && wantsPage(request)
          if (!shows) throw error
          reply.status(failure.status)
          const sentence = failureSentence(failure, deskLanguage(request, context))
          return show(request, reply, { ...shopTyped(shop), ...typedIn(request.body) }, sentence)
        },
      },
      async (request, reply) => {
        const typed = typedIn(request.body)
        const { change, wrong } = shopChange(typed, shop)
        if (typed.act !== 'draft') return show(request, reply, typed)
        if (wrong.size > 0) throw new Failure('shop_incomplete')
        const text = withShopChange(live.files.get(file)!.toString('utf8'), change)
        const who = signedIn(request).account.id
        const id = await drafts.begin(who, [draftFile({ name: file, text }, live.files)])
        request.log.info({ draft: id, file, by: who }, 'draft begun')
        return reply.redirect(deskPaths.draft(id), 303)
      },
    )
  }
