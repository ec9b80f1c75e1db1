import type { FastifyInstance, FastifyReply } from 'fastify'
import { z } from 'zod'
import { newId } from '../../base/ids.ts'
import { atTheDesk } from '../../desk/decisions.ts'
import { laidOutOf } from '../../desk/laid-out.ts'
import { answerLaidOut } from '../../desk/lay-out.ts'
import { asFailure, wantsPage } from '../errors.ts'
import { customer } from '../who.ts'
import type { ChatContext } from './context.ts'
import { keyParams, type Opened, openPile, show } from './opened.ts'
import { paths } from './paths.ts'
import { laidOutPage, type RefusedSaying } from './present-laid-out.ts'

const form = z.object({
  answer: z.enum(['yes', 'change']),
  of: z.coerce.number().int().min(1).max(2_000_000_000),
  /** How long it may be the desk says, so that what was typed is not lost. */
  text: z.string().max(100_000).default(''),
  idem: z
    .string()
    .regex(/^[\w-]{8,64}$/)
    .optional()
    .transform((sent) => sent ?? newId()),
})

/** The laid-out quilt, and what its customer says of it before it is sewn. */
export function laidOutRoutes(app: FastifyInstance, context: ChatContext): void {
  const { store } = context

  const showLaidOut = async (
    reply: FastifyReply,
    opened: Opened,
    refused: RefusedSaying | null = null,
  ) => {
    const { key, open, language } = opened
    const page = atTheDesk.includes(open.row.status)
      ? laidOutPage(await laidOutOf(store.db, open.row.id), opened, refused)
      : null
    // A laying that was taken back leaves nothing to look at; the pile's page says where it stands.
    if (!page) return reply.redirect(paths.pile(key), 303)
    if (refused) reply.status(refused.failure.status)
    return show(context, reply, page, { language, key })
  }

  app.get<{ Params: z.infer<typeof keyParams> }>(
    '/i/:key/laid-out',
    {
      config: { who: customer },
      schema: { summary: 'The laid-out quilt, before it is sewn', params: keyParams },
    },
    async (request, reply) => showLaidOut(reply, await openPile(context, request.params.key)),
  )

  app.post<{ Params: z.infer<typeof keyParams>; Body: z.infer<typeof form> }>(
    '/i/:key/laid-out',
    {
      config: { who: customer },
      schema: {
        summary: "The customer's yes to the laid-out quilt, or what to change",
        params: keyParams,
        body: form,
      },
    },
    async (request, reply) => {
      const opened = await openPile(context, request.params.key)
      const { answer, of, text, idem } = request.body
      try {
        await answerLaidOut(context, opened.open.row.id, { kind: answer, of, note: text, idem })
      } catch (error) {
        const failure = asFailure(error)
        if (failure.status >= 500 || failure.status === 404 || !wantsPage(request)) throw error
        request.log.info({ code: failure.code }, 'answer to the laid-out quilt refused')
        return showLaidOut(reply, opened, { text, failure })
      }
      request.log.info({ pile: opened.open.row.number, answer }, 'customer answered the laying')
      return reply.redirect(paths.laidOut(opened.key), 303)
    },
  )
}
