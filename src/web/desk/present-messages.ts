import type { Failure } from '../../base/failures.ts'
import { newId } from '../../base/ids.ts'
import { garmentWords, type NamedGarment } from '../../desk/garment-words.ts'
import { messageLimits } from '../../desk/messages.ts'
import type { Review } from '../../desk/review.ts'
import { type Entry, emptyThread, type Thread, type Waiting } from '../../desk/threads.ts'
import { leavingQuestion } from '../../intake/leaving.ts'
import type { PileRow } from '../../store/schema.ts'
import type { Language } from '../../words/words.ts'
import { failureSentence } from '../errors.ts'
import { deskPaths } from './paths.ts'
import type {
  DeskEntry,
  DeskThread,
  PileMessagesPage,
  StaffWriteForm,
  WrittenPage,
} from './view-messages.ts'
import { momentWords } from './when.ts'

/** A message of the shop that was refused, and what had been typed. */
export interface RefusedWriting {
  readonly item: number | null
  readonly text: string
  readonly wantsAnswer: boolean
  readonly failure: Failure
}

/** Who reads the page, and whom a message would reach. */
export interface MessagesAt {
  readonly number: number
  /** The pile is the workshop's; an open intake's questions are answered, and not seen to without an answer. */
  readonly atDesk: boolean
  readonly language: Language
  readonly csrf: string
  /** Whether the customer has told an address for mails. */
  readonly mailed: boolean
  readonly refused: RefusedWriting | null
}

function stateOf(entry: Entry, { say, locale }: Language): string | null {
  const { settled } = entry
  if (entry.kind === 'message' && entry.by !== null) {
    if (!entry.wantsAnswer) return null
    return settled
      ? say('desk.messages.answered', { at: momentWords(settled.at, locale) })
      : say('desk.messages.waits_for_them')
  }
  return settled
    ? say('desk.notes.settled', { by: settled.by ?? '', at: momentWords(settled.at, locale) })
    : say('desk.messages.waits_for_us')
}

function entryOf(entry: Entry, { number, atDesk, language }: MessagesAt): DeskEntry {
  const { say, has, locale } = language
  const staff = entry.kind === 'message' ? entry.by : null
  const photos = entry.kind === 'message' ? entry.photos : []
  const waits = staff === null && entry.settled === null
  const question = entry.kind === 'note' ? `intake.${entry.question}.short` : ''
  return {
    id: `${entry.kind}-${entry.id}`,
    kind: entry.kind,
    by: staff ?? say('desk.messages.customer'),
    at: momentWords(entry.at, locale),
    about:
      entry.kind === 'note' && entry.question === leavingQuestion
        ? say('desk.notes.leaving')
        : has(question)
          ? say('desk.notes.about', { question: say(question) })
          : null,
    text: entry.text === '' && photos.length === 0 ? say('desk.notes.empty') : entry.text,
    photos: photos.map((id, n) => ({
      id,
      thumb: deskPaths.photo(number, id, 'thumb'),
      view: deskPaths.photo(number, id, 'view'),
      alt: say('messages.photo', { n: n + 1 }),
    })),
    mine: staff !== null,
    state: stateOf(entry, language),
    waits,
    settleAt: !waits
      ? null
      : entry.kind === 'note'
        ? atDesk
          ? deskPaths.settle(number, entry.id)
          : null
        : deskPaths.settleMessage(number, entry.id),
  }
}

function formOf(
  at: MessagesAt,
  item: number | null,
  id: string,
  refused: RefusedWriting | null,
): StaffWriteForm {
  const { number, language, csrf, mailed } = at
  const { longest } = messageLimits
  return {
    id,
    postTo: deskPaths.messages(number),
    hidden: {
      csrf,
      idem: newId(),
      form: id,
      ...(id === 'write' ? {} : { item: String(item ?? '') }),
    },
    text: refused?.text ?? '',
    wantsAnswer: refused?.wantsAnswer ?? true,
    error: refused && failureSentence(refused.failure, language),
    hint: language.say(`desk.messages.${mailed ? 'by_mail' : 'no_mail'}`, { longest }),
  }
}

/** A thread with its form; `name` is what the garment is called, or null for the pile. */
export function deskThread(thread: Thread, name: string | null, at: MessagesAt): DeskThread {
  const { language } = at
  const { item } = thread
  return {
    id: `thread-${item ?? 'pile'}`,
    title: name === null ? language.say('desk.messages.of_pile') : `${item} · ${name}`,
    waits: thread.waitsForStaff,
    entries: thread.entries.map((entry) => entryOf(entry, at)),
    form: formOf(at, item, `answer-${item ?? 'pile'}`, null),
  }
}

/** The thread of a garment, or of the pile, on the pile's own page. */
export function threadOf(
  { row, pile, threads }: Pick<Review, 'row' | 'pile' | 'threads'>,
  item: number | null,
  name: string | null,
  { language, csrf }: Pick<MessagesAt, 'language' | 'csrf'>,
): DeskThread {
  const thread = threads.find((one) => one.item === item) ?? emptyThread(item)
  const mailed = Boolean(pile.contact?.email)
  return deskThread(thread, name, {
    number: row.number,
    atDesk: true,
    language,
    csrf,
    mailed,
    refused: null,
  })
}

/** `garments`: those that may be written about. */
export function pileMessagesPage(
  row: PileRow,
  threads: readonly Thread[],
  garments: readonly NamedGarment[],
  at: MessagesAt,
): PileMessagesPage {
  const { say } = at.language
  const nameOf = (item: number) =>
    garmentWords(
      garments.find((one) => one.item === item),
      item,
      at.language,
    )
  const chosen = at.refused?.item ?? null
  return {
    page: 'messages',
    title: say('desk.messages.title', { number: row.number }),
    csrf: at.csrf,
    back: at.atDesk
      ? { label: say('desk.pile', { number: row.number }), href: deskPaths.pile(row.number) }
      : null,
    threads: threads.map((thread) =>
      deskThread(thread, thread.item === null ? null : nameOf(thread.item), at),
    ),
    form: formOf(at, null, 'write', at.refused),
    about: [
      { value: '', label: say('desk.messages.of_pile'), chosen: chosen === null },
      ...garments.map(({ item }) => ({
        value: String(item),
        label: `${item} · ${nameOf(item)}`,
        chosen: item === chosen,
      })),
    ],
  }
}

export function writtenPage(waiting: readonly Waiting[], language: Language): WrittenPage {
  const { say, locale } = language
  return {
    page: 'written',
    title: say('desk.messages.written'),
    entries: waiting.map(({ pile, item, garment, text, at }) => ({
      href: deskPaths.messages(pile),
      title: [
        say('desk.pile', { number: pile }),
        item === null ? null : garmentWords(garment ?? undefined, item, language),
      ]
        .filter(Boolean)
        .join(' · '),
      text: text || language.say('messages.photo_alone'),
      at: momentWords(at, locale),
    })),
  }
}
