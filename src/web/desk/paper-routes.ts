import type { FastifyRequest } from 'fastify'
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { Failure } from '../../base/failures.ts'
import { pileCode, tagCode } from '../../base/tag.ts'
import { pileAtDesk, review } from '../../desk/review.ts'
import { estimatePrinted, packingList } from '../../papers/printed-packing.ts'
import type { Language } from '../../words/words.ts'
import { agreedPaper } from '../chat/agreed-paper.ts'
import { outside } from '../chat/frame.ts'
import { sendPdf } from '../send-pdf.ts'
import { printedPage } from '../view-printed.ts'
import { staff, workshop } from '../who.ts'
import { type DeskContext, deskLanguage } from './context.ts'
import { custodyPaths } from './custody-paths.ts'
import { showDesk } from './page.ts'
import { deskPaths } from './paths.ts'
import { benchPrinted, type PaperReader, type PilePaper, pilePapers } from './present-papers.ts'

const params = z.object({ pile: z.string().min(1).max(64) })
const garmentParams = params.extend({ n: z.coerce.number().int().min(1).max(100_000) })

const names = Object.keys(pilePapers) as PilePaper[]

/** The papers of a pile and of its garments, as pages and as PDF. */
export const paperRoutes =
  (context: DeskContext): FastifyPluginAsyncZod =>
  async (app) => {
    const { store, knowledge } = context

    const readerOf = async (request: FastifyRequest, pile: string): Promise<PaperReader> => ({
      context,
      review: await review(store.db, knowledge, pile),
      language: deskLanguage(request, context),
      outside: outside(request, context),
    })

    for (const name of names) {
      app.get(
        `/piles/:pile/papers/${name}`,
        { config: { who: workshop }, schema: { summary: `A pile's paper: ${name}`, params } },
        async (request, reply) => {
          const reader = await readerOf(request, request.params.pile)
          const { number } = reader.review.row
          const printed = await pilePapers[name](reader)
          const page = printedPage(printed, {
            pdf: deskPaths.pdf(number, name),
            back: { label: reader.language.say('desk.pile', { number }), href: deskPaths.bench },
            language: reader.language,
          })
          return showDesk(context, request, reply, page)
        },
      )
      app.get(
        `/piles/:pile/papers/${name}.pdf`,
        {
          config: { who: workshop },
          schema: { summary: `A pile's paper as a PDF: ${name}`, params },
        },
        async (request, reply) => {
          const reader = await readerOf(request, request.params.pile)
          const printed = await pilePapers[name](reader)
          const code = pileCode(reader.review.row.number)
          return sendPdf(context, request, reply, { printed, name: `${name}-${code}` })
        },
      )
    }

    app.get(
      '/piles/:pile/garments/:n/bench',
      {
        config: { who: workshop },
        schema: { summary: 'The bench sheet of one garment', params: garmentParams },
      },
      async (request, reply) => {
        const { pile, n } = request.params
        const reader = await readerOf(request, pile)
        const { number } = reader.review.row
        const page = printedPage(await benchPrinted(reader, n), {
          pdf: deskPaths.benchPdf(number, n),
          back: { label: reader.language.say('bench.open'), href: deskPaths.teardown(number, n) },
          beside: [
            { label: reader.language.say('records.open'), href: custodyPaths.record(number, n) },
          ],
          language: reader.language,
        })
        return showDesk(context, request, reply, page)
      },
    )

    app.get(
      '/piles/:pile/garments/:n/bench.pdf',
      {
        config: { who: workshop },
        schema: { summary: 'The bench sheet of one garment, as a PDF', params: garmentParams },
      },
      async (request, reply) => {
        const { pile, n } = request.params
        const reader = await readerOf(request, pile)
        const printed = await benchPrinted(reader, n)
        const name = `bench-${tagCode(reader.review.row.number, n)}`
        return sendPdf(context, request, reply, { printed, name })
      },
    )

    /** What was agreed, in a language of the shop. */
    const agreed = async (pile: string, language: Language) => {
      const row = await pileAtDesk(store.db, pile)
      const paper = await agreedPaper(store, row, language)
      return { paper, code: pileCode(row.number) }
    }

    app.get(
      '/piles/:pile/papers/packing.pdf',
      {
        config: { who: workshop },
        schema: { summary: 'What the box should hold, as a PDF', params },
      },
      async (request, reply) => {
        const language = deskLanguage(request, context)
        const { paper, code } = await agreed(request.params.pile, language)
        const printed = packingList(paper, language)
        return sendPdf(context, request, reply, { printed, name: `packing-${code}` })
      },
    )

    app.get(
      '/piles/:pile/papers/estimate.pdf',
      { config: { who: staff }, schema: { summary: 'The estimate as a PDF', params } },
      async (request, reply) => {
        const language = deskLanguage(request, context)
        const { paper, code } = await agreed(request.params.pile, language)
        const printed = estimatePrinted(paper, language)
        if (!printed) throw new Failure('not_found')
        return sendPdf(context, request, reply, { printed, name: `estimate-${code}` })
      },
    )
  }
