import type { FastifyInstance, FastifyReply } from 'fastify'
import { z } from 'zod'
import { Failure, type FailureCode } from '../../base/failures.ts'
import { looksOf } from '../../intake/garment-look.ts'
import { type Marker, markSheet, readMarkedSheet, unmarkSheet } from '../../intake/sheet-marks.ts'
import { spotPhotos } from '../../intake/spot-photos.ts'
import { customer } from '../who.ts'
import type { ChatContext } from './context.ts'
import { keyParams, type Opened, openPile, show } from './opened.ts'
import { paths } from './paths.ts'
import { photoLinks } from './present-garment.ts'
import { readerOf } from './present-pages.ts'
import { filledAtFirst, sheetShown, sheetWords } from './present-sheet.ts'
import { filledBy, type SheetFilled, sheetForm } from './sheet-form.ts'

const params = keyParams.extend({ id: z.string().regex(/^[\w-]{1,64}$/) })

/** Refusals that are answered with the page itself, its corners as they were sent. */
export const cornersRefused: readonly FailureCode[] = [
  'busy',
  'corner_outside',
  'corners_incomplete',
  'corners_no_sheet',
  'corners_not_that_sheet',
  'corners_other_sheet',
  'photo_failed',
  'sheet_not_named',
  'sheet_small',
  'sheet_unsure',
]

const marker: Marker = { who: null, mayIn: ['open'] }

/** A photo of a garment of an open pile. Throws `not_found`, `pile_confirmed`. */
async function markable(context: ChatContext, { open }: Opened, id: string) {
  const garment = open.pile.garments.find(
    ({ told, dropped }) => !dropped && told.photoIds.includes(id),
  )
  const { db } = context.store
  const [picture] = garment ? await spotPhotos(db, open.row.id, [id]) : []
  if (!garment || !picture) throw new Failure('not_found')
  if (open.row.status !== 'open') throw new Failure('pile_confirmed')
  const [seen = null] = await looksOf(db, open.row.id, [id])
  return { garment, picture, seen }
}

/** The customer marks the four corners of a sheet on a photo, to have the garment measured by it. */
export function sheetRoutes(app: FastifyInstance, context: ChatContext): void {
  const showSheet = async (
    reply: FastifyReply,
    opened: Opened,
    found: Awaited<ReturnType<typeof markable>>,
    { filled, from, refused }: { filled: SheetFilled; from: string; refused: Failure | null },
  ) => {
    const { key, open, language } = opened
    const { say } = language
    const { garment, picture, seen } = found
    const reader = readerOf(open, key, language)
    const shown = sheetShown(
      {
        picture,
        photo: photoLinks([picture.id], garment, reader)[0]!,
        seen,
        filled,
        refused,
        by: ({ sheet }) => say('sheet.by_you', { sheet: sheetWords(sheet, say) }),
        canTakeBack: seen?.sheet?.by === 'customer',
        postTo: paths.sheet(key, picture.id),
        hidden: { from },
      },
      language,
    )
    return show(
      context,
      reply,
      {
        page: 'sheet',
        title: say('sheet.title'),
        lead: say('sheet.lead'),
        shown,
        backHref: from ? paths.question(key, garment.n, from) : paths.pile(key),
      },
      { language, key },
    )
  }

  app.get<{ Params: z.infer<typeof params> }>(
    '/i/:key/photos/:id/sheet',
    {
      config: { who: customer },
      schema: { summary: 'A photo, to mark the corners of a sheet of paper on', params },
    },
    async (request, reply) => {
      const { key, id } = request.params
      const opened = await openPile(context, key)
      const found = await markable(context, opened, id)
      const { from } = sheetForm.pick({ from: true }).catch({ from: '' }).parse(request.query)
      return showSheet(reply, opened, found, {
        filled: filledAtFirst(found.seen),
        from: questionIn(from),
        refused: null,
      })
    },
  )

  app.post<{ Params: z.infer<typeof params>; Body: z.infer<typeof sheetForm> }>(
    '/i/:key/photos/:id/sheet',
    {
      config: { who: customer },
      schema: {
        summary: 'Marks one corner more, or measures by the four that are marked',
        params,
        body: sheetForm,
      },
    },
    async (request, reply) => {
      const { key, id } = request.params
      const opened = await openPile(context, key)
      const found = await markable(context, opened, id)
      const { picture, garment } = found
      const from = questionIn(request.body.from)
      const filled = filledBy(request.body, picture.height / picture.width)
      const back = from ? paths.question(key, garment.n, from) : paths.pile(key)
      const pileId = opened.open.row.id
      try {
        if (request.body.act === 'take-back') {
          await unmarkSheet(context, pileId, id, marker)
          return await reply.redirect(back, 303)
        }
        if (request.body.act === 'measure') {
          await markSheet(context, pileId, id, readMarkedSheet(filled), marker)
          request.log.info({ sheet: filled.sheet }, 'a sheet was marked')
          return await reply.redirect(back, 303)
        }
      } catch (error) {
        if (!(error instanceof Failure) || !cornersRefused.includes(error.code)) throw error
        request.log.info({ code: error.code, sheet: filled.sheet }, 'a marked sheet was refused')
        return await showSheet(reply.status(error.status), opened, found, {
          filled,
          from,
          refused: error,
        })
      }
      return showSheet(reply, opened, found, { filled, from, refused: null })
    },
  )
}

/** Where the page leads back to: a question by its name; anything else leads to the pile. */
const questionIn = (from: string): string => (/^[a-z_]{1,60}$/.test(from) ? from : '')
