import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import { z } from 'zod'
import { Failure } from '../../base/failures.ts'
import { questionsOf } from '../../flow/kept.ts'
import { frozen } from '../../intake/agreement.ts'
import type { Open } from '../../intake/conversation.ts'
import { draftsOf, photoOf } from '../../intake/photos.ts'
import { type AsPlanned, asPlanned } from '../../intake/planned.ts'
import { toPlan } from '../../intake/to-plan.ts'
import type { Language } from '../../words/words.ts'
import { answerRoutes } from './answer-routes.ts'
import { buttonRoutes } from './button-routes.ts'
import type { ChatContext } from './context.ts'
import { type Framing, frameOf, languageOf, outside } from './frame.ts'
import { paths } from './paths.ts'
import { photosOf } from './present-garment.ts'
import {
  type ConfirmedPaper,
  confirmedPage,
  gatherPage,
  questionPage,
  readerOf,
  reviewPage,
} from './present-pages.ts'
import { type Asking, findAsking } from './present-question.ts'
import { renderPage } from './render.tsx'
import { replyWords } from './said.ts'
import type { ChatPage } from './view.ts'

// Whatever stands there is looked up: a key that was cut off is an unknown link, not a wrong address.
export const keyParams = z.object({ key: z.string().min(1) })

export const questionParams = keyParams.extend({
  item: z.coerce.number().int().min(0).max(100_000),
  question: z.string().max(60),
})

const photoParams = keyParams.extend({
  id: z.string().regex(/^[\w-]{1,64}$/),
  size: z.enum(['view', 'thumb', 'cloth']),
})

const languageParams = keyParams.extend({ code: z.string().max(8) })

/** A pile opened by its key, in the language it is held in. */
export interface Opened {
  readonly key: string
  readonly open: Open
  readonly language: Language
}

export async function openPile(context: ChatContext, key: string): Promise<Opened> {
  const open = await context.conversation.open(key)
  return { key, open, language: context.knowledge.languages.get(open.row.language)! }
}

export const html = (reply: FastifyReply, text: string): FastifyReply =>
  reply.type('text/html; charset=utf-8').header('cache-control', 'no-store').send(text)

export function show(
  context: ChatContext,
  reply: FastifyReply,
  page: ChatPage,
  framing: Framing,
): FastifyReply {
  return html(reply, renderPage(page, frameOf(context, framing), framing.language.say))
}

/** For so long a page waits for its plan, ms: between two garments little, before confirming more. */
const patience = { asking: 0, gathering: 300, reviewing: 1200 } as const

/** The pile's plan as far as it is known; asking for it begins it. */
export const plannedFor = (
  { plans }: ChatContext,
  { pile }: Open,
  at: keyof typeof patience,
): Promise<AsPlanned> => asPlanned(toPlan(pile), plans, patience[at])

/** A question for photos, with those that were received before its answer was refused. */
export async function withDrafts(
  { store }: ChatContext,
  { row }: Open,
  asking: Asking,
): Promise<Asking> {
  const { item, question } = asking
  if (question.kind !== 'photo') return asking
  const drafts = await draftsOf(store.db, { pileId: row.id, item, question: question.id })
  return { ...asking, drafts }
}

/** `told` is the number of the act that an answer from elsewhere has just gone over. */
function noticeOf({ open, language }: Opened, told: unknown): string | null {
  const act = open.entries.find(({ seq }) => String(seq) === told)?.act
  if (act?.act !== 'answer') return null
  const { once, repeated } = questionsOf(open.flow)
  const question = (act.item === 0 ? once : repeated).get(act.question)
  if (!question) return null
  return language.say('notice.overtaken', {
    asked: language.say(`intake.${question.id}.short`),
    said: replyWords(question, act.reply, language.say, language.locale),
  })
}

async function showConfirmed(
  context: ChatContext,
  request: FastifyRequest,
  reply: FastifyReply,
  { key, open, language }: Opened,
  print: boolean,
) {
  const papers = await frozen<ConfirmedPaper>(context.store.db, open.row.id)
  const paper = papers?.[language.code]
  if (!paper) throw new Failure('not_found')
  const keepLink = outside(request, context) + paths.pile(key)
  const reader = readerOf(open, key, language)
  const photoOf = (n: number) => {
    const garment = open.pile.garments.find((one) => one.n === n)
    return (garment && photosOf(garment, reader)[0]) ?? null
  }
  const page = confirmedPage(paper, photoOf, { key, language, print, keepLink })
  return show(context, reply, page, { language, key })
}

/** Shows where the conversation stands. */
async function showPlace(
  context: ChatContext,
  request: FastifyRequest,
  reply: FastifyReply,
  opened: Opened,
  notice: string | null,
) {
  const { key, open, language } = opened
  if (open.row.status !== 'open') return showConfirmed(context, request, reply, opened, false)
  const reader = readerOf(open, key, language)
  const { place } = open.pile.followed
  const framing = { language, key, notice }
  if (place.at === 'gather') {
    const planned = await plannedFor(context, open, 'gathering')
    return show(context, reply, gatherPage(open, planned, reader), framing)
  }
  if (place.at === 'end') {
    const planned = await plannedFor(context, open, 'reviewing')
    return show(context, reply, reviewPage(open, planned, reader), framing)
  }
  const asking = findAsking(open.pile.followed, place.item, place.question.id)!
  return show(
    context,
    reply,
    questionPage(
      open,
      {
        asking: await withDrafts(context, open, asking),
        refused: null,
        planned: await plannedFor(context, open, 'asking'),
      },
      reader,
    ),
    framing,
  )
}

/** The customer's pages. What is sent to them stands in answer-routes.ts and button-routes.ts. */
export async function chatRoutes(app: FastifyInstance, context: ChatContext): Promise<void> {
  app.get('/', { schema: { summary: "The shop's start page" } }, async (request, reply) => {
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
  })

  app.get<{ Params: z.infer<typeof keyParams> }>(
    '/i/:key',
    { schema: { summary: 'Where an intake stands', params: keyParams } },
    async (request, reply) => {
      const opened = await openPile(context, request.params.key)
      const { told } = request.query as { told?: unknown }
      return showPlace(context, request, reply, opened, noticeOf(opened, told))
    },
  )

  app.get<{ Params: z.infer<typeof questionParams> }>(
    '/i/:key/:item/:question',
    {
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
        refused: null,
        planned: await plannedFor(context, open, 'asking'),
      }
      const page = questionPage(open, shown, reader)
      return show(context, reply, page, { language, key })
    },
  )

  app.get<{ Params: z.infer<typeof keyParams> }>(
    '/i/:key/garments',
    { schema: { summary: 'The page between two garments', params: keyParams } },
    async (request, reply) => {
      const { key, open, language } = await openPile(context, request.params.key)
      if (open.row.status !== 'open') return reply.redirect(paths.pile(key), 303)
      const planned = await plannedFor(context, open, 'gathering')
      return show(context, reply, gatherPage(open, planned, readerOf(open, key, language)), {
        language,
        key,
      })
    },
  )

  app.get<{ Params: z.infer<typeof keyParams> }>(
    '/i/:key/review',
    { schema: { summary: 'Everything once more', params: keyParams } },
    async (request, reply) => {
      const { key, open, language } = await openPile(context, request.params.key)
      if (open.row.status !== 'open') return reply.redirect(paths.pile(key), 303)
      const planned = await plannedFor(context, open, 'reviewing')
      return show(context, reply, reviewPage(open, planned, readerOf(open, key, language)), {
        language,
        key,
      })
    },
  )

  app.get<{ Params: z.infer<typeof keyParams> }>(
    '/i/:key/keep',
    { schema: { summary: 'The link to come back with', params: keyParams } },
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
          backHref: paths.pile(key),
        },
        { language, key },
      )
    },
  )

  app.get<{ Params: z.infer<typeof keyParams> }>(
    '/i/:key/paper',
    { schema: { summary: 'Checklist and estimate for the printer', params: keyParams } },
    async (request, reply) =>
      showConfirmed(context, request, reply, await openPile(context, request.params.key), true),
  )

  app.get<{ Params: z.infer<typeof languageParams> }>(
    '/i/:key/language/:code',
    { schema: { summary: 'Goes on in another language', params: languageParams } },
    async (request, reply) => {
      const { key, code } = request.params
      await context.conversation.speak(key, code)
      return reply.redirect(paths.pile(key), 303)
    },
  )

  app.get<{ Params: z.infer<typeof photoParams> }>(
    '/i/:key/photos/:id/:size',
    { schema: { summary: 'A photo of this pile', params: photoParams } },
    async (request, reply) => {
      const { key, id, size } = request.params
      const { open } = await openPile(context, key)
      const { hash } = await photoOf(context.store.db, open.row.id, id)
      return reply
        .type('image/jpeg')
        .header('cache-control', 'private, max-age=3600')
        .send(await context.photos.open(hash, size))
    },
  )

  answerRoutes(app, context)
  buttonRoutes(app, context)
}
