import type { FastifyInstance } from 'fastify'
import { validatorCompiler } from 'fastify-type-provider-zod'
import { z } from 'zod'
import type { FailureCode } from '../../base/failures.ts'
import { pileOfMail, setReminders } from '../../desk/mail/mails.ts'
import { remindersStopped } from '../../desk/mail/queue-mail.ts'
import { stopPath } from '../../desk/mail/sender.ts'
import { asFailure, wantsPage } from '../errors.ts'
import { anyone, customer } from '../who.ts'
import type { ChatContext } from './context.ts'
import { keyParams, openPile, show } from './opened.ts'
import { paths } from './paths.ts'
import { talkOf } from './present-messages.ts'
import { photoTroubles } from './received-label.ts'
import { keepMessage, messageForm, readMessage } from './received-message.ts'
import { noticeOf } from './show-place.ts'

/** Refusals that are answered with the page itself, what was typed still in it. */
const onThePage: readonly FailureCode[] = [
  'empty_answer',
  'answer_too_long',
  'too_many_messages',
  'empty_file',
  'unsupported_type',
  'corrupt_image',
  'too_many_pixels',
  'too_large',
  'too_small',
  'too_many_photos',
  ...photoTroubles,
]

const mailParams = z.object({ mail: z.string().regex(/^[\w-]{16}$/) })

// A mail program's one POST brings a field of its own (RFC 8058), our page's button may ask for them again.
const stopForm = z.object({ reminders: z.enum(['stop', 'again']).catch('stop') }).catch({
  reminders: 'stop',
})

/** What the shop and the customer write to each other, and the reminders that a customer may stop. */
export function messageRoutes(app: FastifyInstance, context: ChatContext): void {
  const { store, clock, knowledge } = context

  app.get<{ Params: z.infer<typeof keyParams> }>(
    '/i/:key/messages',
    {
      config: { who: customer },
      schema: { summary: 'What the shop and the customer wrote', params: keyParams },
    },
    async (request, reply) => {
      const opened = await openPile(context, request.params.key)
      const { key, language } = opened
      const { told } = request.query as { told?: unknown }
      const talk = await talkOf(context, opened)
      return show(
        context,
        reply,
        { page: 'messages', talk, backHref: paths.pile(key) },
        { language, key, notice: noticeOf(opened, told) },
      )
    },
  )

  app.post<{ Params: z.infer<typeof keyParams> }>(
    '/i/:key/messages',
    {
      config: { who: customer },
      schema: { summary: 'Writes to the shop', params: keyParams, body: messageForm },
      // The body is checked in readMessage: it may be multipart.
      validatorCompiler: ({ schema, httpPart, ...route }) =>
        httpPart === 'body'
          ? (value) => ({ value })
          : validatorCompiler({ schema: schema as z.ZodType, httpPart, ...route }),
    },
    async (request, reply) => {
      const opened = await openPile(context, request.params.key)
      const { key, language, open } = opened
      const sent = await readMessage(request)
      const { text, item, form: from } = sent.fields
      try {
        await keepMessage(context, open.row.id, sent)
        request.log.info({ pile: open.row.number, item }, 'customer wrote')
        return reply.redirect(paths.written(key, open.row.status === 'open'), 303)
      } catch (error) {
        const failure = asFailure(error)
        if (!onThePage.includes(failure.code) || !wantsPage(request)) throw error
        request.log.info({ code: failure.code }, 'message refused')
        const talk = await talkOf(context, opened, { item, text, failure, form: from })
        reply.status(failure.status)
        return show(
          context,
          reply,
          { page: 'messages', talk, backHref: paths.pile(key) },
          { language, key },
        )
      }
    },
  )

  app.get<{ Params: z.infer<typeof mailParams> }>(
    '/stop/:mail',
    {
      config: { who: anyone },
      schema: { summary: 'Where reminders of a pile are stopped', params: mailParams },
    },
    async (request, reply) => {
      const { mail } = request.params
      const pile = await pileOfMail(store.db, mail)
      const language = knowledge.languages.get(pile.language)!
      const stopped = await remindersStopped(store.db, pile.id)
      return show(
        context,
        reply,
        { page: 'reminders', stopped, postTo: stopPath(mail) },
        { language, key: null },
      )
    },
  )

  app.post<{ Params: z.infer<typeof mailParams>; Body: z.infer<typeof stopForm> }>(
    '/stop/:mail',
    {
      config: { who: anyone },
      schema: {
        summary: 'Stops reminders of a pile with one POST (RFC 8058), or asks for them again',
        params: mailParams,
        body: stopForm,
      },
    },
    async (request, reply) => {
      const { mail } = request.params
      const { id } = await pileOfMail(store.db, mail)
      const wanted = request.body.reminders === 'again'
      await setReminders(store.db, id, wanted, clock())
      request.log.info({ wanted }, 'reminders stopped or asked for')
      // A mail program follows no redirect, and reads no page.
      if (!wantsPage(request)) return reply.status(200).type('text/plain').send('')
      return reply.redirect(stopPath(mail), 303)
    },
  )
}
