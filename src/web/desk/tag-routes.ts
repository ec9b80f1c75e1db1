import type { FastifyInstance } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { scannedCode } from '../../desk/scanned.ts'
import { ofCode } from '../../desk/whereabouts.ts'
import { frameOf as chatFrame, languageOf } from '../chat/frame.ts'
import { renderPage } from '../chat/render.tsx'
import { anyone } from '../who.ts'
import type { DeskContext } from './context.ts'
import { custodyPaths } from './custody-paths.ts'
import { visitorOf } from './guard.ts'

const params = z.object({ tag: z.string().max(60) })

/** The address that stands in a tag's QR code. Who is signed in is known under /desk alone. */
export function tagLinkRoutes(app: FastifyInstance): void {
  app.get<{ Params: z.infer<typeof params> }>(
    '/t/:tag',
    { config: { who: anyone }, schema: { summary: 'What a tag leads to', params } },
    async (request, reply) =>
      reply.redirect(`/desk/tag/${encodeURIComponent(request.params.tag)}`, 303),
  )
}

/** A scanned tag: the garment's page for the workshop, whose it is for anybody else. */
export const tagRoutes =
  (context: DeskContext): FastifyPluginAsyncZod =>
  async (app) => {
    app.get(
      '/tag/:tag',
      {
        config: { who: anyone },
        schema: { summary: 'A scanned tag: its garment, or whose it is', params },
      },
      async (request, reply) => {
        const { tag } = request.params
        if (await visitorOf(request, context)) {
          const scanned = scannedCode(tag)
          const found = scanned?.fits ? await ofCode(context.store.db, scanned.code) : null
          const to = found
            ? custodyPaths.subject(found.pile, found.subject)
            : `${custodyPaths.home}?q=${encodeURIComponent(tag)}`
          return reply.redirect(to, 303)
        }
        const language = languageOf(request, context)
        const { name, email, phone, address } = context.knowledge.shop
        const page = { page: 'tag' as const, shop: name, email, phone, address }
        return reply
          .type('text/html; charset=utf-8')
          .header('cache-control', 'no-store')
          .send(renderPage(page, chatFrame(context, { language, key: null }), language.say))
      },
    )
  }
