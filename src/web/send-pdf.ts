import type { FastifyReply, FastifyRequest } from 'fastify'
import { type PaperName, paperNames } from '../papers/paper-size.ts'
import type { Printed } from '../papers/printed.ts'
import type { ChatContext } from './chat/context.ts'

/** What was asked for in the address, else what the shop prints on. */
function paperFor(
  request: FastifyRequest,
  { knowledge }: Pick<ChatContext, 'knowledge'>,
): PaperName {
  const { paper } = (request.query ?? {}) as { paper?: unknown }
  return paperNames.find((name) => name === paper) ?? knowledge.shop.paper
}

/** Answers with a paper as a PDF that opens in the browser. `name`: letters, figures and hyphens. */
export async function sendPdf(
  context: Pick<ChatContext, 'knowledge' | 'printer'>,
  request: FastifyRequest,
  reply: FastifyReply,
  { printed, name }: { readonly printed: Printed; readonly name: string },
): Promise<FastifyReply> {
  const pdf = await context.printer.print(printed, paperFor(request, context))
  return reply
    .type('application/pdf')
    .header('content-disposition', `inline; filename="${name}.pdf"`)
    .header('cache-control', 'no-store')
    .send(Buffer.from(pdf))
}
