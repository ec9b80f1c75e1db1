import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { outside } from '../chat/frame.ts'
import { owner } from '../who.ts'
import { type DeskContext, deskLanguage } from './context.ts'
import { showDesk } from './page.ts'
import { deskPaths } from './paths.ts'
import { embedPage } from './present-embed.ts'

const typed = z.string().trim().max(120).default('').catch('')

const query = z.object({
  accent: typed,
  ground: typed,
  font: typed,
  corner: typed,
  /** The language that the intake begins in. */
  in: z.string().max(8).default('').catch(''),
  lang: z.string().max(8).optional(),
})

/** How to put the intake on the shop's own site: for the owner. */
export const embedDeskRoutes =
  (context: DeskContext): FastifyPluginAsyncZod =>
  async (app) => {
    const { knowledge, embedOrigins } = context

    app.get(
      '/embed',
      {
        config: { who: owner },
        schema: { summary: 'The lines that put the intake on another site', querystring: query },
      },
      async (request, reply) => {
        const language = deskLanguage(request, context)
        const languages = knowledge.shop.languages.map((code) => knowledge.languages.get(code)!)
        const { in: wanted, lang: _, ...asked } = request.query
        const page = embedPage(asked, {
          language,
          spoken: languages.find(({ code }) => code === wanted) ?? languages[0]!,
          languages,
          home: outside(request, context),
          origins: embedOrigins,
        })
        return showDesk(context, request, reply, page, { path: deskPaths.embed })
      },
    )
  }
