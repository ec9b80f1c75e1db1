import type { FastifyInstance, FastifyRequest } from 'fastify'
import type { z } from 'zod'
import { Failure } from '../../base/failures.ts'
import { pileCode } from '../../base/tag.ts'
import { isAccepted } from '../../desk/decisions.ts'
import { review } from '../../desk/review.ts'
import { packingWithEstimate } from '../../papers/printed-packing.ts'
import { tagSheet } from '../../papers/printed-tags.ts'
import { keepsakePrinted } from '../desk/present-papers.ts'
import { sendPdf } from '../send-pdf.ts'
import { printedPage } from '../view-printed.ts'
import { customer } from '../who.ts'
import { agreedPaper } from './agreed-paper.ts'
import type { ChatContext } from './context.ts'
import { outside } from './frame.ts'
import { keyParams, type Opened, openPile, show } from './opened.ts'
import { paths, tagLink } from './paths.ts'
import { type ConfirmedPaper, readerOf } from './present-pages.ts'
import { taggedOf } from './present-papers.ts'

type Keyed = { Params: z.infer<typeof keyParams> }

const agreed = ({ store }: ChatContext, { open, language }: Opened): Promise<ConfirmedPaper> =>
  agreedPaper(store, open.row, language)

/**
 * The quilt with its pieces numbered, as staff have laid it. Throws `not_found` before the workshop has accepted
 * the pile, `paper_waiting` while it is not laid.
 */
async function keepsakeOf(context: ChatContext, { open, language }: Opened, from: string) {
  const { db } = context.store
  if (!(await isAccepted(db, open.row))) throw new Failure('not_found')
  const found = await review(db, context.knowledge, open.row.id)
  return keepsakePrinted({ context, review: found, language, outside: from })
}

/** The customer's papers, as PDF and where there is no page of its own as a page. */
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

  app.get<Keyed>(
    '/i/:key/papers/keepsake.pdf',
    {
      config: { who: customer },
      schema: { summary: 'Whose cloth is where in the quilt, as a PDF', params: keyParams },
    },
    async (request, reply) => {
      const found = await opened(request)
      const printed = await keepsakeOf(context, found, outside(request, context))
      const name = `keepsake-${pileCode(found.open.row.number)}`
      return sendPdf(context, request, reply, { printed, name })
    },
  )

  app.get<Keyed>(
    '/i/:key/papers/keepsake',
    {
      config: { who: customer },
      schema: { summary: 'Whose cloth is where in the quilt', params: keyParams },
    },
    async (request, reply) => {
      const found = await opened(request)
      const { key, language } = found
      const printed = await keepsakeOf(context, found, outside(request, context))
      const page = printedPage(printed, {
        pdf: paths.pdf(key, 'keepsake'),
        back: { label: language.say('offer.back'), href: paths.pile(key) },
        language,
      })
      return show(context, reply, page, { language, key })
    },
  )
}
