import type { FastifyReply, FastifyRequest } from 'fastify'
import { isAccepted } from '../../desk/decisions.ts'
import { questionsOf } from '../../flow/kept.ts'
import { agreedPaper } from './agreed-paper.ts'
import type { ChatContext } from './context.ts'
import { outside } from './frame.ts'
import { becoming, type Opened, openPile, plannedFor, show, withDrafts } from './opened.ts'
import { paths, screenedTold, written } from './paths.ts'
import { postingOf, type RefusedPosting } from './posting-load.ts'
import { nameOf, photosOf } from './present-garment.ts'
import { askedOf, talkOf } from './present-messages.ts'
import {
  type Becoming,
  confirmedPage,
  gatherPage,
  questionPage,
  readerOf,
  reviewPage,
} from './present-pages.ts'
import { findAsking } from './present-question.ts'
import { quiltsAgreed } from './present-quilt.ts'
import { statusOf } from './present-status.ts'
import { priceNotice } from './price-notice.ts'
import { replyWords } from './said.ts'
import { standingOf } from './status-load.ts'

/** `told` is that a message has arrived, or the number of the act that an answer from elsewhere has just gone over. */
export function noticeOf({ open, language }: Opened, told: unknown): string | null {
  if (told === written) return language.say('notice.written')
  if (told === screenedTold) return language.say('notice.screened')
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

export async function showConfirmed(
  context: ChatContext,
  request: FastifyRequest,
  reply: FastifyReply,
  opened: Opened,
  {
    print,
    posting: refused = null,
    told = null,
  }: { print: boolean; posting?: RefusedPosting | null; told?: string | null },
) {
  const { key, open, language } = opened
  const paper = await agreedPaper(context.store, open.row, language)
  const keepLink = outside(request, context) + paths.pile(key)
  const reader = readerOf(open, key, language)
  const photoOf = (n: number) => {
    const garment = open.pile.garments.find((one) => one.n === n)
    return (garment && photosOf(garment, reader)[0]) ?? null
  }
  const nameOfGarment = (n: number) => {
    const garment = open.pile.garments.find((one) => one.n === n)
    return garment ? nameOf(garment, reader) : language.say('tag.unnamed', { n })
  }
  const quilts = quiltsAgreed(paper.quilts ?? null, open.pile, reader)
  const talk = print ? null : await talkOf(context, opened)
  const standing = print ? null : await standingOf(context.store.db, open.row, context.clock())
  const status =
    standing &&
    statusOf(standing, {
      key,
      language,
      nameOf: nameOfGarment,
      asked: talk?.threads.some(({ asks }) => asks) ?? false,
      currency: context.knowledge.shop.currency,
      needBy: open.pile.needBy,
    })
  const posting = standing && (await postingOf(context, standing, key, language, refused))
  const accepted = await isAccepted(context.store.db, open.row)
  const shown = { key, language, print, accepted, keepLink }
  const page = confirmedPage(paper, { photoOf, quilts, status, posting }, shown)
  return show(context, reply, { ...page, talk }, { language, key, notice: told })
}

export interface Notices {
  /** That an answer went over somebody else's; null: it did not. */
  readonly told: string | null
  /** As the address says: the act before the one whose price is told. */
  readonly since: unknown
}

/** Shows where the conversation stands. */
export async function showPlace(
  context: ChatContext,
  request: FastifyRequest,
  reply: FastifyReply,
  opened: Opened,
  { told, since }: Notices,
) {
  const { key, open, language } = opened
  if (open.row.status !== 'open')
    return showConfirmed(context, request, reply, opened, { print: false, told })
  const reader = readerOf(open, key, language)
  const { place } = open.pile.followed
  // A pile that was confirmed before is being changed, and its customer has to confirm it again.
  const changing = open.row.confirmed_at === null ? null : language.say('notice.changing')
  const asked = place.at === 'gather' ? null : await askedOf(context, opened)
  const framing = { language, key, notice: told ?? changing, asked }
  const withPrice = ({ planned }: Becoming) => ({
    ...framing,
    notice: told ?? priceNotice(context, opened, planned, since) ?? changing,
  })
  if (place.at === 'gather') {
    const becomes = await becoming(context, open, 'gathering')
    const talk = await talkOf(context, opened)
    const page = gatherPage(open, becomes, reader)
    return show(
      context,
      reply,
      { ...page, talk: talk.threads.length > 0 ? talk : null },
      withPrice(becomes),
    )
  }
  if (place.at === 'end') {
    const becomes = await becoming(context, open, 'reviewing')
    return show(context, reply, reviewPage(open, becomes, reader), withPrice(becomes))
  }
  const asking = findAsking(open.pile.followed, place.item, place.question.id)!
  return show(
    context,
    reply,
    questionPage(
      open,
      {
        asking: await withDrafts(context, open, asking),
        sent: null,
        planned: await plannedFor(context, open, 'asking'),
      },
      reader,
    ),
    framing,
  )
}

/** What an act leaves to be told: that an answer went over another, by that act's number; or the act before it, for the price. */
export interface Left {
  readonly told?: number | typeof screenedTold
  readonly since?: number
}

export const prefersPage = ({ headers }: FastifyRequest): boolean =>
  headers.prefer === 'return=representation'

/**
 * Goes on after an act: by a redirect to where the conversation stands, or with that page at once where a script
 * prefers it (RFC 7240), which saves the way there and back.
 */
export async function goOn(
  context: ChatContext,
  request: FastifyRequest,
  reply: FastifyReply,
  key: string,
  { told, since }: Left = {},
) {
  const path =
    told !== undefined
      ? paths.overtaken(key, told)
      : since !== undefined
        ? paths.changed(key, since)
        : paths.pile(key)
  if (!prefersPage(request)) return reply.redirect(path, 303)
  const opened = await openPile(context, key)
  reply.header('content-location', path).header('preference-applied', 'return=representation')
  return showPlace(context, request, reply, opened, {
    told: noticeOf(opened, told === undefined ? undefined : String(told)),
    since: since === undefined ? undefined : String(since),
  })
}
