import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { Failure } from '../../base/failures.ts'
import { pileCode } from '../../base/tag.ts'
import { verdictsOf } from '../../desk/consequences.ts'
import { pileAtDesk, review } from '../../desk/review.ts'
import { frozen } from '../../intake/agreement.ts'
import { estimatePrinted, packingList } from '../../papers/printed-packing.ts'
import { tagSheet } from '../../papers/printed-tags.ts'
import { outside } from '../chat/frame.ts'
import { tagLink } from '../chat/paths.ts'
import type { ConfirmedPaper } from '../chat/present-pages.ts'
import { taggedOf } from '../chat/present-papers.ts'
import { sendPdf } from '../send-pdf.ts'
import { staff, workshop } from '../who.ts'
import { type DeskContext, deskLanguage } from './context.ts'
import { readerAt } from './present-garment.ts'

const params = z.object({ pile: z.string().min(1).max(64) })

/** The papers that travel with a pile, as PDF. */
export const paperRoutes =
  (context: DeskContext): FastifyPluginAsyncZod =>
  async (app) => {
    const { store, knowledge } = context

    /** What was agreed, in a language of the shop. */
    const agreed = async (pile: string, language: string) => {
      const row = await pileAtDesk(store.db, pile)
      const papers = await frozen<ConfirmedPaper>(store.db, row.id)
      const paper = papers?.[language]
      if (!paper) throw new Failure('not_found')
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
        const { paper, code } = await agreed(request.params.pile, language.code)
        const printed = packingList(paper, language)
        return sendPdf(context, request, reply, { printed, name: `packing-${code}` })
      },
    )

    app.get(
      '/piles/:pile/papers/estimate.pdf',
      { config: { who: staff }, schema: { summary: 'The estimate as a PDF', params } },
      async (request, reply) => {
        const language = deskLanguage(request, context)
        const { paper, code } = await agreed(request.params.pile, language.code)
        const printed = estimatePrinted(paper, language)
        if (!printed) throw new Failure('not_found')
        return sendPdf(context, request, reply, { printed, name: `estimate-${code}` })
      },
    )

    app.get(
      '/piles/:pile/papers/tags.pdf',
      {
        config: { who: workshop },
        schema: { summary: 'A tag for each garment, as a PDF', params },
      },
      async (request, reply) => {
        const language = deskLanguage(request, context)
        const { row, garments } = await review(store.db, knowledge, request.params.pile)
        const verdicts = verdictsOf(garments)
        const here = garments
          .map(({ garment }) => garment)
          .filter(({ n }) => verdicts.get(n) !== 'decline')
        const printed = tagSheet(
          {
            pile: String(row.number),
            at: row.changed_at,
            garments: taggedOf({ garments: here }, readerAt(language)),
            linkOf: (code) => tagLink(outside(request, context), code),
            units: knowledge.shop.units,
          },
          language,
        )
        return sendPdf(context, request, reply, { printed, name: `tags-${pileCode(row.number)}` })
      },
    )
  }
