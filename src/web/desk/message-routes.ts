import type { FastifyReply, FastifyRequest } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import type { FailureCode } from '../../base/failures.ts'
import { newId } from '../../base/ids.ts'
import { atTheDesk } from '../../desk/decisions.ts'
import { namedGarments } from '../../desk/garment-words.ts'
import { settleMessage, writeAsStaff } from '../../desk/messages.ts'
import { pileWrittenOf, threadsOf, waitingMessages } from '../../desk/threads.ts'
import { contactOf } from '../../intake/rows.ts'
import type { PileRow } from '../../store/schema.ts'
import { asFailure, wantsPage } from '../errors.ts'
import { staff } from '../who.ts'
import { type DeskContext, deskLanguage } from './context.ts'
import { signedIn } from './guard.ts'
import { showDesk } from './page.ts'
import { deskPaths } from './paths.ts'
import { pileMessagesPage, type RefusedWriting, writtenPage } from './present-messages.ts'

const pileParams = z.object({ pile: z.coerce.number().int().min(1).max(999_999_999) })
const messageParams = pileParams.extend({ message: z.string().min(1).max(64) })
const settleForm = z.object({ csrf: z.string().max(200) })
const form = z.object({
  csrf: z.string().max(200),
  /** How long it may be the desk says, so that what was typed is not lost. */
  text: z.string().max(100_000).default(''),
  item: z
    .string()
    .regex(/^(|[1-9]\d{0,5})$/)
    .default('')
    .transform((item) => (item === '' ? null : Number(item))),
  asks: z.literal('1').optional(),
  idem: z
    .string()
    .regex(/^[\w-]{8,64}$/)
    .optional()
    .transform((sent) => sent ?? newId()),
})

/** Refusals that are answered with the page itself, what was typed still in it. */
const onThePage: readonly FailureCode[] = ['empty_answer', 'answer_too_long', 'too_many_messages']

/** What was written of a pile, whoever has it: messages are answered while an intake is open too. */
export const messageRoutes =
  (context: DeskContext): FastifyPluginAsyncZod =>
  async (app) => {
    const { store, clock } = context
    const { db } = store

    const showMessages = async (
      request: FastifyRequest,
      reply: FastifyReply,
      row: PileRow,
      refused: RefusedWriting | null,
    ) => {
      const language = deskLanguage(request, context)
      const contact = await contactOf(db, row.id)
      const page = pileMessagesPage(
        row,
        await threadsOf(db, row.id),
        await namedGarments(db, row.id),
        {
          number: row.number,
          language,
          csrf: signedIn(request).csrf,
          mailed: Boolean(contact?.email),
          refused,
          atDesk: atTheDesk.includes(row.status),
        },
      )
      return showDesk(context, request, reply, page, { path: deskPaths.messages(row.number) })
    }

    app.get(
      '/messages',
      {
        config: { who: staff },
        schema: { summary: "Customers' messages that wait for the workshop" },
      },
      async (request, reply) => {
        const waiting = await waitingMessages(db)
        return showDesk(
          context,
          request,
          reply,
          writtenPage(waiting, deskLanguage(request, context)),
        )
      },
    )

    app.get(
      '/piles/:pile/messages',
      {
        config: { who: staff },
        schema: { summary: 'What was written of a pile', params: pileParams },
      },
      async (request, reply) =>
        showMessages(request, reply, await pileWrittenOf(db, request.params.pile), null),
    )

    app.post(
      '/piles/:pile/messages',
      {
        config: { who: staff },
        schema: { summary: 'Writes to the customer of a pile', params: pileParams, body: form },
      },
      async (request, reply) => {
        const row = await pileWrittenOf(db, request.params.pile)
        const { item, text, asks, idem } = request.body
        const writing = { item, text, wantsAnswer: asks === '1', idem }
        try {
          await writeAsStaff(context, row.id, { ...writing, who: signedIn(request).account.id })
        } catch (error) {
          const failure = asFailure(error)
          if (!onThePage.includes(failure.code) || !wantsPage(request)) throw error
          reply.status(failure.status)
          return showMessages(request, reply, row, { ...writing, failure })
        }
        const page = atTheDesk.includes(row.status)
          ? deskPaths.pile(row.number)
          : deskPaths.messages(row.number)
        return reply.redirect(`${page}#thread-${item ?? 'pile'}`, 303)
      },
    )

    app.post(
      '/piles/:pile/messages/:message/settle',
      {
        config: { who: staff },
        schema: {
          summary: "Marks a customer's message as seen to",
          params: messageParams,
          body: settleForm,
        },
      },
      async (request, reply) => {
        const { pile, message } = request.params
        const row = await pileWrittenOf(db, pile)
        await settleMessage(store, clock, row.id, message, signedIn(request).account.id)
        return reply.redirect(`${deskPaths.messages(row.number)}#message-${message}`, 303)
      },
    )
  }
