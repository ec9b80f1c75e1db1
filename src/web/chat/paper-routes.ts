import type { FastifyInstance, FastifyRequest } from 'fastify'
import type { z } from 'zod'
import { Failure } from '../../base/failures.ts'
import { pileCode } from '../../base/tag.ts'
import { frozen } from '../../intake/agreement.ts'
import { packingWithEstimate } from '../../papers/printed-packing.ts'
import { tagSheet } from '../../papers/printed-tags.ts'
import { sendPdf } from '../send-pdf.ts'
import { customer } from '../who.ts'
import type { ChatContext } from './context.ts'
import { outside } from './frame.ts'
import { keyParams, type Opened, openPile } from './opened.ts'
import { tagLink } from './paths.ts'
import { type ConfirmedPaper, readerOf } from './present-pages.ts'
import { taggedOf } from './present-papers.ts'

type Keyed = { Params: z.infer<typeof keyParams> }

/** What was agreed, in the language of the pile. Throws `not_found` while it is open. */
async function agreed(context: ChatContext, { open, language }: Opened): Promise<ConfirmedPaper> {
  const papers = await frozen<ConfirmedPaper>(context.store.db, open.row.id)
  const paper = papers?.[language.code]
  if (!paper) throw new Failure('not_found')
  return paper
}

/** The customer's papers as PDF. */
export function paperRoutes(app: FastifyInstance, context: ChatContext): void {
  const { shop } = context.knowledge
  const opened = (request: FastifyRequest<Keyed>) => openPile(context, request.params.key)

  app.get<Keyed>(
    '/i/:key/papers/packing.pdf',
    {
      config: { who: customer },
      schema: { summary: 'Packing list and estimate, as a PDF', params: keyParams },
    },
    async (request, reply) => {
      const found = await opened(request)
      const paper = await agreed(context, found)
      return sendPdf(context, request, reply, {
        printed: packingWithEstimate(paper, found.language),
        name: `packing-${pileCode(found.open.row.number)}`,
      })
    },
  )

  app.get<Keyed>(
    '/i/:key/papers/tags.pdf',
    {
      config: { who: customer },
      schema: { summary: 'A tag for each garment, as a PDF', params: keyParams },
    },
    async (request, reply) => {
      const found = await opened(request)
      const { confirmedAt } = await agreed(context, found)
      const { key, open, language } = found
      const printed = tagSheet(
        {
          pile: String(open.row.number),
          at: confirmedAt,
          garments: taggedOf(open.pile, readerOf(open, key, language)),
          linkOf: (code) => tagLink(outside(request, context), code),
          units: shop.units,
        },
        language,
      )
      return sendPdf(context, request, reply, {
        printed,
        name: `tags-${pileCode(open.row.number)}`,
      })
    },
  )
}
