import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { Failure } from '../../base/failures.ts'
import { draftsOf } from '../../desk/drafts.ts'
import { flowVersions, listFiles } from '../../desk/live-files.ts'
import { owner } from '../who.ts'
import { type DeskContext, deskLanguage } from './context.ts'
import { showDesk } from './page.ts'
import { filePage, filesPage } from './present-files.ts'

const fileQuery = z.object({ name: z.string().min(1).max(200), lang: z.string().max(8).optional() })

/** Which of the owner's files apply. */
export const fileRoutes =
  (context: DeskContext): FastifyPluginAsyncZod =>
  async (app) => {
    const { store, clock, knowledge, live } = context
    const today = () => new Date(clock()).toISOString().slice(0, 10)

    app.get(
      '/files',
      { config: { who: owner }, schema: { summary: "The owner's files that apply, and drafts" } },
      async (request, reply) => {
        const shown = {
          live,
          files: listFiles(live, knowledge, today()),
          versions: await flowVersions(store.db, knowledge),
          drafts: await draftsOf(store.db, clock),
        }
        return showDesk(context, request, reply, filesPage(shown, deskLanguage(request, context)))
      },
    )

    app.get(
      '/files/view',
      {
        config: { who: owner },
        schema: { summary: 'The text of one of them', querystring: fileQuery },
      },
      async (request, reply) => {
        const { name } = request.query
        const file = listFiles(live, knowledge, today()).find((one) => one.name === name)
        if (!file) throw new Failure('not_found')
        const text = live.files.get(name)!.toString('utf8')
        return showDesk(
          context,
          request,
          reply,
          filePage(file, text, deskLanguage(request, context)),
        )
      },
    )
  }
