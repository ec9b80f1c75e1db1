import type { FastifyInstance } from 'fastify'
import { z } from 'zod'
import { everPhotoOf } from '../../intake/photos.ts'
import { sendPhoto } from '../send-photo.ts'
import { anyone, customer } from '../who.ts'
import { agreementRoutes } from './agreement-routes.ts'
import { answerRoutes } from './answer-routes.ts'
import { buttonRoutes } from './button-routes.ts'
import { closetRoutes } from './closet-routes.ts'
import type { ChatContext } from './context.ts'
import { languageOf, outside } from './frame.ts'
import { laidOutRoutes } from './laid-out-routes.ts'
import { messageRoutes } from './message-routes.ts'
import {
  becoming,
  keyParams,
  openPile,
  plannedFor,
  questionParams,
  show,
  withDrafts,
} from './opened.ts'
import { paperRoutes } from './paper-routes.ts'
import { paths } from './paths.ts'
import { postingRoutes } from './posting.ts'
import { gatherPage, questionPage, readerOf, reviewPage } from './present-pages.ts'
import { findAsking } from './present-question.ts'
import { quiltRoutes } from './quilt-routes.ts'
import { sheetRoutes } from './sheet-routes.ts'
import { noticeOf, showConfirmed, showPlace } from './show-place.ts'
import { yoursRoutes } from './yours-routes.ts'

const photoParams = keyParams.extend({
  id: z.string().regex(/^[\w-]{1,64}$/),
  size: z.enum(['view', 'thumb', 'cloth']),
})

const languageParams = keyParams.extend({ code: z.string().max(8) })

/** The customer's pages. What is sent to them stands in answer-routes.ts and button-routes.ts. */
export async function chatRoutes(app: FastifyInstance, context: ChatContext): Promise<void> {
  app.get(
    '/',
    { config: { who: anyone }, schema: { summary: "The shop's start page" } },
    async (request, reply) => {
      const language = languageOf(request, context)
      return show(
        context,
        reply,
        {
          page: 'start',
          start: { act: 'start', postTo: paths.start, hidden: { lang: language.code } },
          welcome: [],
        },
        { language, key: null },
      )
    },
  )

  postingRoutes(app, context)
  yoursRoutes(app, context)

  app.get<{ Params: z.infer<typeof keyParams> }>(
    '/i/:key',
    { config: { who: customer }, schema: { summary: 'Where an intake stands', params: keyParams } },
    async (request, reply) => {
      const opened = await openPile(context, request.params.key)
      const { told, since } = request.query as { told?: unknown; since?: unknown }
      return showPlace(context, request, reply, opened, { told: noticeOf(opened, told), since })
    },
  )

  app.get<{ Params: z.infer<typeof questionParams> }>(
    '/i/:key/:item/:question',
    {
      config: { who: customer },
      schema: {
        summary: 'A question, to answer it or to change its answer',
        params: questionParams,
      },
    },
    async (request, reply) => {
      const { key, item, question } = request.params
      const { open, language } = await openPile(context, key)
      const asking = findAsking(open.pile.followed, item, question)
      if (!asking || open.row.status !== 'open') return reply.redirect(paths.pile(key), 303)
      const reader = readerOf(open, key, language)
      const shown = {
        asking: await withDrafts(context, open, asking),
        sent: null,
        planned: await plannedFor(context, open, 'asking'),
      }
      const page = questionPage(open, shown, reader)
      return show(context, reply, page, { language, key })
    },
  )

  app.get<{ Params: z.infer<typeof keyParams> }>(
    '/i/:key/garments',
    {
      config: { who: customer },
      schema: { summary: 'The page between two garments', params: keyParams },
    },
    async (request, reply) => {
      const { key, open, language } = await openPile(context, request.params.key)
      if (open.row.status !== 'open') return reply.redirect(paths.pile(key), 303)
      const becomes = await becoming(context, open, 'gathering')
      return show(context, reply, gatherPage(open, becomes, readerOf(open, key, language)), {
        language,
        key,
      })
    },
  )

  app.get<{ Params: z.infer<typeof keyParams> }>(
    '/i/:key/review',
    { config: { who: customer }, schema: { summary: 'Everything once more', params: keyParams } },
    async (request, reply) => {
      const { key, open, language } = await openPile(context, request.params.key)
      if (open.row.status !== 'open') return reply.redirect(paths.pile(key), 303)
      const becomes = await becoming(context, open, 'reviewing')
      return show(context, reply, reviewPage(open, becomes, readerOf(open, key, language)), {
        language,
        key,
      })
    },
  )

  app.get<{ Params: z.infer<typeof keyParams> }>(
    '/i/:key/keep',
    {
      config: { who: customer },
      schema: { summary: 'The link to come back with', params: keyParams },
    },
    async (request, reply) => {
      const { key, language } = await openPile(context, request.params.key)
      return show(
        context,
        reply,
        {
          page: 'save',
          keepLink: outside(request, context) + paths.pile(key),
          holds: language.say('notice.holds', { days: context.knowledge.shop.link_days }),
          mail: null,
          email: '',
          errors: [],
          mailedTo: null,
          yoursHref: paths.yours(key),
          backHref: paths.pile(key),
        },
        { language, key },
      )
    },
  )

  app.get<{ Params: z.infer<typeof keyParams> }>(
    '/i/:key/paper',
    {
      config: { who: customer },
      schema: { summary: 'Checklist and estimate for the printer', params: keyParams },
    },
    async (request, reply) =>
      showConfirmed(context, request, reply, await openPile(context, request.params.key), {
        print: true,
      }),
  )

  app.get<{ Params: z.infer<typeof languageParams> }>(
    '/i/:key/language/:code',
    {
      config: { who: customer },
      schema: { summary: 'Goes on in another language', params: languageParams },
    },
    async (request, reply) => {
      const { key, code } = request.params
      await context.conversation.speak(key, code)
      return reply.redirect(paths.pile(key), 303)
    },
  )

  app.get<{ Params: z.infer<typeof photoParams> }>(
    '/i/:key/photos/:id/:size',
    { config: { who: customer }, schema: { summary: 'A photo of this pile', params: photoParams } },
    async (request, reply) => {
      const { key, id, size } = request.params
      const { open } = await openPile(context, key)
      const row = await everPhotoOf(context.store.db, open.row.id, id)
      return sendPhoto(context.photos, reply, { row, size })
    },
  )

  answerRoutes(app, context)
  buttonRoutes(app, context)
  closetRoutes(app, context)
  messageRoutes(app, context)
  sheetRoutes(app, context)
  quiltRoutes(app, context)
  paperRoutes(app, context)
  agreementRoutes(app, context)
  laidOutRoutes(app, context)
}
