import type { FastifyReply, FastifyRequest } from 'fastify'
import { queue } from '../../desk/queue.ts'
import { type DeskContext, deskLanguage, keepLanguage } from './context.ts'
import { type Framing, frameOf, pathOf } from './frame.ts'
import { renderDesk } from './render.tsx'
import type { DeskPage } from './view.ts'

/** Sends a page of the desk in the reader's language, which is kept when it was asked for. */
export function showDesk(
  context: DeskContext,
  request: FastifyRequest,
  reply: FastifyReply,
  page: DeskPage,
  framing: Partial<Omit<Framing, 'language'>> = {},
): FastifyReply {
  const language = deskLanguage(request, context)
  keepLanguage(request, reply, context)
  const frame = frameOf(context, {
    language,
    visitor: request.atDesk,
    path: pathOf(request),
    ...framing,
  })
  return reply
    .type('text/html; charset=utf-8')
    .header('cache-control', 'no-store')
    .send(renderDesk(page, frame, language.say))
}

/** So many of the waiting piles stand beside the one that is looked at. */
const beside = 8

export const waitingBeside = ({ store, clock }: DeskContext) =>
  queue(store.db, { list: 'us', page: 1, length: beside, at: clock() })
