import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { mailsOf, pileOfMail, revokeLinks } from '../../desk/mail/mails.ts'
import { tryAgain } from '../../desk/mail/outbox.ts'
import { contactOf } from '../../intake/rows.ts'
import { mailStates } from '../../store/schema-mail.ts'
import { staff } from '../who.ts'
import { type DeskContext, deskLanguage } from './context.ts'
import { signedIn } from './guard.ts'
import { showDesk } from './page.ts'
import { deskPaths } from './paths.ts'
import { mailsPage } from './present-mails.ts'

const query = z.object({
  state: z.enum(mailStates).nullable().catch(null).default(null),
  page: z.coerce.number().int().min(1).max(1_000_000).catch(1),
  lang: z.string().max(8).optional(),
})
const mailParams = z.object({ mail: z.string().min(1).max(64) })
const form = z.object({ csrf: z.string().max(200) })

/** The outbox. */
export const mailRoutes =
  (context: DeskContext): FastifyPluginAsyncZod =>
  async (app) => {
    const { store, clock } = context

    app.get(
      '/mails',
      {
        config: { who: staff },
        schema: { summary: 'Mails to customers, by state', querystring: query },
      },
      async (request, reply) => {
        const { state, page } = request.query
        const mails = await mailsOf(store.db, { state, page, now: clock() })
        const { csrf } = signedIn(request)
        const language = deskLanguage(request, context)
        return showDesk(context, request, reply, mailsPage(mails, state, { csrf, language }))
      },
    )

    app.post(
      '/mails/:mail/again',
      {
        config: { who: staff },
        schema: { summary: 'Tries a mail again that was given up', params: mailParams, body: form },
      },
      async (request, reply) => {
        const { mail } = request.params
        const { id } = await pileOfMail(store.db, mail)
        const contact = await contactOf(store.db, id)
        const to = contact && { name: contact.name, address: contact.email }
        await tryAgain(store, clock, mail, to)
        request.log.info({ mail }, 'mail to be tried again')
        return reply.redirect(deskPaths.mails('waiting'), 303)
      },
    )

    app.post(
      '/mails/:mail/revoke',
      {
        config: { who: staff },
        schema: { summary: 'Takes back the links of a mail', params: mailParams, body: form },
      },
      async (request, reply) => {
        const { mail } = request.params
        await pileOfMail(store.db, mail)
        await revokeLinks(store.db, mail, clock())
        request.log.info({ mail }, 'links of a mail taken back')
        return reply.redirect(deskPaths.mails(), 303)
      },
    )
  }
