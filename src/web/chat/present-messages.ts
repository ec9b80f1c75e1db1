import type { Failure } from '../../base/failures.ts'
import { dateFormat } from '../../base/formats.ts'
import { newId } from '../../base/ids.ts'
import { mostMessagePhotos } from '../../desk/message-photos.ts'
import { messageLimits } from '../../desk/messages.ts'
import type { Entry, Thread } from '../../desk/threads.ts'
import { threadsOf } from '../../desk/threads.ts'
import { failureSentence } from '../errors.ts'
import type { ChatContext } from './context.ts'
import type { Opened } from './opened.ts'
import { paths } from './paths.ts'
import { nameOf } from './present-garment.ts'
import { readerOf } from './present-pages.ts'
import type { Link } from './view.ts'
import type { Said, Talk, TalkThread, WriteForm } from './view-messages.ts'

/** A message that was refused, and what had been typed. */
export interface RefusedMessage {
  readonly item: number | null
  readonly text: string
  readonly failure: Failure
}

const threadId = (item: number | null): string => `thread-${item ?? 'pile'}`

const dayWords = (at: number, locale: string): string =>
  dateFormat(locale, { dateStyle: 'medium', timeZone: 'UTC' }).format(at)

function saidOf(entry: Entry, { key, language: { say, locale } }: Opened): Said {
  const photos = entry.kind === 'message' ? entry.photos : []
  const staff = entry.kind === 'message' ? entry.by : null
  return {
    id: entry.id,
    by: staff ?? say('messages.you'),
    at: dayWords(entry.at, locale),
    text: entry.text || (photos.length > 0 ? '' : say('messages.asked_nothing')),
    photos: photos.map((id, n) => ({
      id,
      thumb: paths.photo(key, id, 'thumb'),
      view: paths.photo(key, id, 'view'),
      alt: say('messages.photo', { n: n + 1 }),
    })),
    mine: staff === null,
  }
}

function formOf(
  { key, language }: Opened,
  item: number | null,
  { id, label, refused }: { id: string; label: string; refused: RefusedMessage | null },
): WriteForm {
  return {
    id,
    postTo: paths.messages(key),
    hidden: { idem: newId(), item: item === null ? '' : String(item), form: id },
    label,
    text: refused?.text ?? '',
    longest: messageLimits.longest,
    mostPhotos: item === null ? 0 : mostMessagePhotos,
    error: refused && failureSentence(refused.failure, language),
  }
}

/** What the customer calls the thing that a thread is about. */
function aboutWords(opened: Opened, item: number | null): string {
  const { open, key, language } = opened
  if (item === null) return language.say('messages.the_pile')
  const garment = open.pile.garments.find(({ n }) => n === item)
  return garment
    ? nameOf(garment, readerOf(open, key, language))
    : language.say('tag.unnamed', { n: item })
}

function threadOf(
  thread: Thread,
  opened: Opened,
  refused: (RefusedMessage & { form: string }) | null,
): TalkThread {
  const { say } = opened.language
  const about = aboutWords(opened, thread.item)
  const id = `answer-${thread.item ?? 'pile'}`
  return {
    id: threadId(thread.item),
    title:
      thread.asks === null
        ? say('messages.about', { about })
        : say('messages.asks', { who: thread.asks, about }),
    asks: thread.asks !== null,
    said: thread.entries.map((entry) => saidOf(entry, opened)),
    answer: formOf(opened, thread.item, {
      id,
      label: say(thread.asks === null ? 'messages.more' : 'messages.answer'),
      refused: refused?.form === id ? refused : null,
    }),
  }
}

/** Everything that was written about a pile, for its customer. */
export async function talkOf(
  { store }: Pick<ChatContext, 'store'>,
  opened: Opened,
  refused: (RefusedMessage & { form: string }) | null = null,
): Promise<Talk> {
  const threads = await threadsOf(store.db, opened.open.row.id)
  const shown = threads.map((thread) => threadOf(thread, opened, refused))
  const answering = shown.some(({ answer }) => answer.error !== null)
  return {
    threads: [...shown.filter(({ asks }) => asks), ...shown.filter(({ asks }) => !asks)],
    write: formOf(opened, null, {
      id: 'write',
      label: opened.language.say('messages.text'),
      // Whatever form it came from, what was typed is not lost.
      refused: answering ? null : refused,
    }),
  }
}

/** That the shop waits for an answer; null: it does not. */
export async function askedOf(
  { store }: Pick<ChatContext, 'store'>,
  opened: Opened,
): Promise<Link | null> {
  const threads = await threadsOf(store.db, opened.open.row.id)
  const asking = threads.find(({ asks }) => asks !== null)
  if (!asking) return null
  const about = aboutWords(opened, asking.item)
  return {
    label: opened.language.say('messages.asks', { who: asking.asks!, about }),
    href: paths.messages(opened.key),
  }
}
