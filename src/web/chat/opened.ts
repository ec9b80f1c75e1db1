import '@fastify/compress'
import type { FastifyReply } from 'fastify'
import { z } from 'zod'
import type { Open } from '../../intake/conversation.ts'
import { looksOf } from '../../intake/garment-look.ts'
import { labelPhotoOf } from '../../intake/label-photo.ts'
import { draftsOf, sidesOf } from '../../intake/photos.ts'
import { type AsPlanned, asPlanned } from '../../intake/planned.ts'
import { labelSeen, ticked } from '../../intake/replies.ts'
import { spotPhotos } from '../../intake/spot-photos.ts'
import { toPlan } from '../../intake/to-plan.ts'
import type { Language } from '../../words/words.ts'
import type { ChatContext } from './context.ts'
import { type Framing, frameOf } from './frame.ts'
import { isProposed } from './present-look.ts'
import type { Becoming } from './present-pages.ts'
import type { Asking } from './present-question.ts'
import { quiltsSoFar } from './quilts.ts'
import { labelReader } from './received-label.ts'
import { renderPage } from './render.tsx'
import type { ChatPage } from './view.ts'

// Whatever stands there is looked up: a key that was cut off is an unknown link, not a wrong address.
export const keyParams = z.object({ key: z.string().min(1) })

export const questionParams = keyParams.extend({
  item: z.coerce.number().int().min(0).max(100_000),
  question: z.string().max(60),
})

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

/** Compressed where the browser can read it: on a slow network that is half of the wait for a question. */
function html(reply: FastifyReply, text: string): FastifyReply {
  reply.type('text/html; charset=utf-8').header('cache-control', 'no-store').compress(text)
  return reply
}

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

/** A pile that still grows is planned for so long, ms; what is looked over has the planning's own time. */
const budgetWhileGrowing = 1500

/** The pile's plan as far as it is known; asking for it begins it. */
export const plannedFor = (
  { plans }: ChatContext,
  open: Open,
  at: keyof typeof patience,
): Promise<AsPlanned> =>
  asPlanned(toPlan(open), plans, {
    patienceMs: patience[at],
    ...(at !== 'reviewing' && { budgetMs: budgetWhileGrowing }),
  })

/** For so long a page waits for each quilt to be laid, ms: where the picture is folded away not at all. */
const patienceLaying = { asking: 0, gathering: 0, reviewing: 1200 } as const

/** The pile's quilts as well. */
export async function becoming(
  context: ChatContext,
  open: Open,
  at: keyof typeof patience,
): Promise<Becoming> {
  const planned = await plannedFor(context, open, at)
  const quilts = await quiltsSoFar(context, open, planned, patienceLaying[at])
  return { planned, quilts }
}

/** A question with the photos that were received for it; `typed`: words that a label's reading took the place of. */
export async function withDrafts(
  context: ChatContext,
  { row }: Open,
  asking: Asking,
  typed = '',
): Promise<Asking> {
  const { item, question, replies } = asking
  const { db } = context.store
  const place = { pileId: row.id, item, question: question.id }
  if (question.kind === 'photo') {
    const drafts = await draftsOf(db, place)
    const ids = [...ticked(replies, question.id), ...drafts]
    const seen = await looksOf(db, row.id, ids)
    return { ...asking, drafts, seen, sides: await sidesOf(db, row.id, ids) }
  }
  if (question.kind === 'spots') {
    return { ...asking, toMark: await spotPhotos(db, row.id, ticked(replies, 'photos')) }
  }
  if (isProposed(question.id))
    return { ...asking, seen: await looksOf(db, row.id, ticked(replies, 'photos')) }
  if (question.kind !== 'label' || !labelReader(context)) return asking
  const photo = await labelPhotoOf(db, place, labelSeen(replies).photo)
  return { ...asking, label: { photo, typed } }
}
