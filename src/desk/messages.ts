import type { Clock } from '../base/clock.ts'
import { Failure } from '../base/failures.ts'
import { newId } from '../base/ids.ts'
import { lengthOf } from '../flow/sense.ts'
import { cleanText, isBlank } from '../flow/text.ts'
import type { Knowledge } from '../intake/knowledge.ts'
import { refreshWaiting } from '../intake/waiting.ts'
import type { Store } from '../store/open.ts'
import { lockPile } from '../store/rows.ts'
import type { Db, PileRow } from '../store/schema.ts'
import type { Language } from '../words/words.ts'
import { garmentWords } from './garment-words.ts'
import { mailQuestion } from './mail/gather-questions.ts'
import { queueMail } from './mail/queue-mail.ts'
import { keepWithMessage, messagePhotos } from './message-photos.ts'

/** Characters; and how many messages one pile may hold. */
export const messageLimits = { longest: 2000, most: 500 } as const

export interface Message {
  readonly id: string
  /** The garment's number; null: the pile. */
  readonly item: number | null
  /** Who of the shop wrote it; null: the customer did. */
  readonly by: string | null
  /** Empty: photos alone came. */
  readonly text: string
  /** Ids of photos that came with it. */
  readonly photos: readonly string[]
  readonly wantsAnswer: boolean
  readonly at: number
  /** When it was answered or seen to, and by whom of the shop, where it was one of them. */
  readonly settled: { readonly at: number; readonly by: string | null } | null
}

/** A message as a page sends it. */
export interface Writing {
  readonly item: number | null
  readonly text: string
  /** Sent once by the page: the same key again on the same pile changes nothing. */
  readonly idem: string
}

export interface StaffWriting extends Writing {
  /** The account's id. */
  readonly who: string
  readonly wantsAnswer: boolean
}

export interface MessageParts {
  readonly store: Store
  readonly clock: Clock
  readonly knowledge: Pick<Knowledge, 'languages' | 'shop'>
}

/** Of one pile, oldest first. */
export async function messagesOf(db: Db, pileId: string): Promise<Message[]> {
  const rows = await db
    .selectFrom('message')
    .leftJoin('account as author', 'author.id', 'message.account_id')
    .leftJoin('account as settler', 'settler.id', 'message.settled_by')
    .selectAll('message')
    .select(['author.name as author', 'settler.name as settler'])
    .where('pile_id', '=', pileId)
    .orderBy('message.at')
    .orderBy('message.id')
    .execute()
  const photos = await messagePhotos(db, pileId)
  return rows.map((row) => ({
    id: row.id,
    item: row.item,
    by: row.author,
    text: row.text,
    photos: photos.get(row.id) ?? [],
    wantsAnswer: row.wants_answer === 1,
    at: row.at,
    settled: row.settled_at === null ? null : { at: row.settled_at, by: row.settler },
  }))
}

/** Words may be left out where something else is sent. Throws `empty_answer` or `answer_too_long` {longest}. */
export function readText(raw: string, alone = true): string {
  const text = cleanText(raw)
  if (isBlank(text)) {
    if (alone) throw new Failure('empty_answer')
    return ''
  }
  const { longest } = messageLimits
  if (lengthOf(text) > longest) throw new Failure('answer_too_long', { longest })
  return text
}

async function admitted(trx: Db, pileId: string, item: number | null): Promise<void> {
  const { n } = await trx
    .selectFrom('message')
    .select(({ fn }) => fn.countAll<number>().as('n'))
    .where('pile_id', '=', pileId)
    .executeTakeFirstOrThrow()
  if (Number(n) >= messageLimits.most) throw new Failure('too_many_messages')
  if (item === null) return
  const garment = await trx
    .selectFrom('garment')
    .select('item')
    .where('pile_id', '=', pileId)
    .where('item', '=', item)
    .executeTakeFirst()
  if (!garment) throw new Failure('not_found')
}

interface Kept extends Writing {
  readonly accountId: string | null
  /** Ids of photos that came with it, kept as drafts so far. */
  readonly photos?: readonly string[]
  readonly wantsAnswer: boolean
}

/** Whether a message of this key is kept already. */
export async function isMessageKept(db: Db, pileId: string, idem: string): Promise<boolean> {
  const row = await db
    .selectFrom('message')
    .select('id')
    .where('pile_id', '=', pileId)
    .where('idem', '=', idem)
    .executeTakeFirst()
  return row !== undefined
}

/** Keeps a message of a locked pile; null where its key is known. It answers what the other side wrote there. */
async function keep(
  trx: Db,
  row: PileRow,
  { item, text: raw, idem, accountId, wantsAnswer, photos = [] }: Kept,
  now: number,
): Promise<{ id: string; text: string; at: number } | null> {
  const text = readText(raw, photos.length === 0)
  if (await isMessageKept(trx, row.id, idem)) return null
  await admitted(trx, row.id, item)
  const newest = await trx
    .selectFrom('message')
    .select(({ fn }) => fn.max('at').as('at'))
    .where('pile_id', '=', row.id)
    .executeTakeFirst()
  // Two in one millisecond, or a clock set back, may not change the order they were written in.
  const at = Math.max(now, Number(newest?.at ?? 0) + 1)
  await trx
    .updateTable('message')
    .set({ settled_at: at, settled_by: accountId })
    .where('pile_id', '=', row.id)
    .where('item', item === null ? 'is' : '=', item)
    .where('account_id', accountId === null ? 'is not' : 'is', null)
    .where('settled_at', 'is', null)
    .execute()
  const id = newId()
  await trx
    .insertInto('message')
    .values({
      id,
      pile_id: row.id,
      item,
      account_id: accountId,
      text,
      wants_answer: wantsAnswer ? 1 : 0,
      idem,
      at,
      settled_at: null,
      settled_by: null,
    })
    .execute()
  await keepWithMessage(trx, row.id, id, photos)
  await refreshWaiting(trx, row.id)
  return { id, text, at }
}

/** What a message is about, as the customer calls it: "Dad's blue flannel", "your pile". */
export async function aboutWords(
  db: Db,
  language: Language,
  pileId: string,
  item: number | null,
): Promise<string> {
  if (item === null) return language.say('mails.about_pile')
  const garment = await db
    .selectFrom('garment')
    .select(['name', 'kind'])
    .where('pile_id', '=', pileId)
    .where('item', '=', item)
    .executeTakeFirst()
  return garmentWords(garment, item, language)
}

/**
 * Writes to the customer of a locked pile, by mail too where they have told an address; what they had asked
 * of the same garment, or of the pile, is answered by it. Throws what `writeAsStaff` throws.
 */
export async function tellCustomer(
  trx: Db,
  knowledge: Pick<Knowledge, 'languages' | 'shop'>,
  row: PileRow,
  { who, ...writing }: StaffWriting,
  now: number,
): Promise<void> {
  const kept = await keep(trx, row, { ...writing, accountId: who }, now)
  if (!kept) return
  await trx
    .updateTable('note')
    .set({ settled_at: kept.at, settled_by: who })
    .where('pile_id', '=', row.id)
    .where('item', '=', writing.item ?? 0)
    .where('settled_at', 'is', null)
    .execute()
  await refreshWaiting(trx, row.id)
  const { name } = await trx
    .selectFrom('account')
    .select('name')
    .where('id', '=', who)
    .executeTakeFirstOrThrow()
  const language = knowledge.languages.get(row.language)!
  const about = await aboutWords(trx, language, row.id, writing.item)
  if (writing.wantsAnswer) {
    const asked = { who: name, about, text: kept.text, message: kept.id, at: kept.at }
    await mailQuestion(trx, knowledge, { pile: row, ...asked })
    return
  }
  await queueMail(trx, knowledge, {
    pile: row,
    template: 'message',
    gaps: { who: name, about },
    quote: kept.text,
    once: `message ${kept.id}`,
    at: kept.at,
  })
}

const onLocked = <T>(
  store: Store,
  pileId: string,
  work: (trx: Db, row: PileRow) => Promise<T>,
): Promise<T> =>
  store.transaction(async (trx) => {
    const row = await lockPile(trx, pileId)
    if (!row) throw new Failure('not_found')
    return work(trx, row)
  })

/**
 * A message of the shop, about a garment or the pile. Throws `empty_answer`, `answer_too_long` {longest},
 * `too_many_messages`, or `not_found` where the pile has no such garment.
 */
export const writeAsStaff = (
  { store, clock, knowledge }: MessageParts,
  pileId: string,
  writing: StaffWriting,
): Promise<void> =>
  onLocked(store, pileId, (trx, row) => tellCustomer(trx, knowledge, row, writing, clock()))

/** A message of the customer, with photos that were received for it. Throws what `writeAsStaff` throws. */
export const writeAsCustomer = (
  { store, clock }: Pick<MessageParts, 'store' | 'clock'>,
  pileId: string,
  writing: Writing & { readonly photos?: readonly string[] },
): Promise<void> =>
  onLocked(store, pileId, async (trx, row) => {
    await keep(trx, row, { ...writing, accountId: null, wantsAnswer: true }, clock())
  })

/** Marks a customer's message as seen to. Who did so first stays. Throws `not_found` for another pile's. */
export const settleMessage = (
  store: Store,
  clock: Clock,
  pileId: string,
  messageId: string,
  who: string,
): Promise<void> =>
  onLocked(store, pileId, async (trx) => {
    const its = await trx
      .selectFrom('message')
      .select('settled_at')
      .where('id', '=', messageId)
      .where('pile_id', '=', pileId)
      .where('account_id', 'is', null)
      .executeTakeFirst()
    if (!its) throw new Failure('not_found')
    await trx
      .updateTable('message')
      .set({ settled_at: clock(), settled_by: who })
      .where('id', '=', messageId)
      .where('settled_at', 'is', null)
      .execute()
    await refreshWaiting(trx, pileId)
  })
