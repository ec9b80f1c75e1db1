import type { FastifyInstance } from 'fastify'
import { z } from 'zod'
import { Failure } from '../../base/failures.ts'
import type { Followed } from '../../flow/follow.ts'
import type { Sent } from '../../intake/conversation.ts'
import { anyone, customer } from '../who.ts'
import type { ChatContext } from './context.ts'
import { buttonForm } from './form.ts'
import { languageOf } from './frame.ts'
import { becoming, keyParams } from './opened.ts'
import { paths } from './paths.ts'
import { goOn } from './show-place.ts'

// A language that is none of ours is no reason to refuse a beginning.
const startForm = z.object({ lang: z.string().optional() }).catch({})

/** The next free number; a dropped garment keeps its own. */
const nextItem = ({ items }: Followed): number => Math.max(0, ...items.map(({ n }) => n)) + 1

function actOf(button: z.infer<typeof buttonForm>): Sent['act'] {
  if (button.act === 'add-garment') return (followed) => ({ act: 'add', item: nextItem(followed) })
  const { item } = button
  if (item === undefined) throw new Failure('bad_input', { field: 'item', why: 'missing' })
  switch (button.act) {
    case 'copy-garment':
      return (followed) => ({ act: 'copy', item: nextItem(followed), from: item })
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
    { config: { who: anyone }, schema: { summary: 'Opens a new intake', body: startForm } },
    async (request, reply) => {
      await request.server.quotas.intake(request.ip)
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
      config: { who: customer },
      schema: {
        summary: 'Adds, copies, leaves out or puts back a garment',
        params: keyParams,
        body: buttonForm,
      },
    },
    async (request, reply) => {
      const { key } = request.params
      const { idem, seq } = request.body
      const act = actOf(request.body)
      const { seq: kept } = await context.conversation.act(key, { act, idem, seen: seq })
      const changed = typeof act === 'object' && kept !== null
      return goOn(context, request, reply, key, changed ? { since: kept - 1 } : {})
    },
  )

  app.post<Pressed>(
    '/i/:key/confirm',
    {
      config: { who: customer },
      schema: { summary: 'Gives the pile to the workshop', params: keyParams, body: buttonForm },
    },
    async (request, reply) => {
      const { key } = request.params
      // What is confirmed is frozen with its plan and its picture: they are given their time here, outside
      // of the transaction.
      await becoming(context, await context.conversation.open(key), 'reviewing')
      await context.conversation.confirm(key, request.body.idem)
      return goOn(context, request, reply, key)
    },
  )
}
