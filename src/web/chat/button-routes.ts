import type { FastifyInstance } from 'fastify'
import { z } from 'zod'
import { Failure } from '../../base/failures.ts'
import type { Act } from '../../flow/grammar.ts'
import type { Open } from '../../intake/conversation.ts'
import type { ChatContext } from './context.ts'
import { buttonForm } from './form.ts'
import { languageOf } from './frame.ts'
import { paths } from './paths.ts'
import { keyParams, openPile } from './routes.ts'

const startForm = z.object({ lang: z.string().max(8).optional() })

/** The next free number; a dropped garment keeps its own. */
const nextItem = ({ pile }: Open): number => Math.max(0, ...pile.garments.map(({ n }) => n)) + 1

function actOf(open: Open, button: z.infer<typeof buttonForm>): Act {
  if (button.act === 'add-garment') return { act: 'add', item: nextItem(open) }
  const { item } = button
  if (item === undefined) throw new Failure('bad_input', { field: 'item', why: 'missing' })
  switch (button.act) {
    case 'copy-garment':
      return { act: 'copy', item: nextItem(open), from: item }
    case 'drop-garment':
      return { act: 'drop', item }
    case 'restore-garment':
      return { act: 'restore', item }
    default:
      throw new Failure('bad_input', { field: 'act', why: 'unknown' })
  }
}

interface Pressed {
  Params: z.infer<typeof keyParams>
  Body: z.infer<typeof buttonForm>
}

/** What the buttons of the pages do: begin, add, copy, leave out, put back, confirm. */
export function buttonRoutes(app: FastifyInstance, context: ChatContext): void {
  app.post<{ Body: z.infer<typeof startForm> }>(
    paths.start,
    { schema: { summary: 'Opens a new intake', body: startForm } },
    async (request, reply) => {
      const { lang } = request.body
      const { languages } = context.knowledge.shop
      const language = languages.find((code) => code === lang) ?? languageOf(request, context).code
      const key = await context.conversation.start(language)
      return reply.redirect(paths.pile(key), 303)
    },
  )

  app.post<Pressed>(
    '/i/:key/garments',
    {
      schema: {
        summary: 'Adds, copies, leaves out or puts back a garment',
        params: keyParams,
        body: buttonForm,
      },
    },
    async (request, reply) => {
      const { key } = request.params
      const { idem, seq } = request.body
      const { open } = await openPile(context, key)
      await context.conversation.act(key, { act: actOf(open, request.body), idem, seen: seq })
      return reply.redirect(paths.pile(key), 303)
    },
  )

  app.post<Pressed>(
    '/i/:key/confirm',
    {
      schema: { summary: 'Gives the pile to the workshop', params: keyParams, body: buttonForm },
    },
    async (request, reply) => {
      const { key } = request.params
      await context.conversation.confirm(key, request.body.idem)
      return reply.redirect(paths.pile(key), 303)
    },
  )
}
