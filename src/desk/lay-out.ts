import { days } from '../base/clock.ts'
import { Failure } from '../base/failures.ts'
import { cutsOf } from '../custody/laid-out.ts'
import { dayIn } from '../papers/offer-paper.ts'
import { standingRecords } from './bench-records.ts'
import { dayOf, startOf } from './capacity.ts'
import {
  type AnswerBody,
  type LaidBody,
  type LaidOut,
  type Laying,
  laidOutIn,
  planSign,
  projectLaidOut,
  type YesBody,
} from './laid-out.ts'
import { queueMail } from './mail/queue-mail.ts'
import {
  type Book,
  longestRecordLine,
  onBook,
  type RecordAt,
  type Recording,
  readNote,
  readWords,
  write,
} from './recording.ts'

/** So many photos show one laying at most. */
export const mostLaidPhotos = 6

/** What the workshop writes of the pile itself. */
type OfPile = Omit<Recording, 'item' | 'photo'>

const standsNow = ({ ledger: { db, row }, records }: Book): Promise<LaidOut> =>
  laidOutIn(db, row.id, standingRecords(records))

/**
 * The quilt is laid out: keeps its photos and which pieces they show, and asks the customer to look. The same sent
 * twice is one. Throws `nothing_cut`, `form_incomplete` {field}, `too_many_photos` {most}, `answer_too_long` {longest},
 * and what `onBook` throws.
 */
export const layOut = (
  at: RecordAt,
  pileId: string,
  { photos, ...laying }: OfPile & { readonly photos: readonly string[] },
): Promise<void> =>
  onBook(at, pileId, { ...laying, item: 0 }, async (book) => {
    const { db, row, entries, clock } = book.ledger
    const { idem, who } = laying
    const note = readNote(laying.note)
    const cuts = cutsOf(entries)
    if (cuts.size === 0) throw new Failure('nothing_cut')
    const [photo] = photos
    if (photo === undefined) throw new Failure('form_incomplete', { field: 'photo' })
    if (photos.length > mostLaidPhotos) {
      throw new Failure('too_many_photos', { most: mostLaidPhotos })
    }
    const body: LaidBody = {
      photos: [...photos],
      cuts: [...cuts],
      plan: await planSign(db, pileId),
    }
    const seq = await write(book, { item: 0, kind: 'laid', body, note, photo, idem, who })
    await projectLaidOut(db, pileId)
    await queueMail(db, at.knowledge, {
      pile: row,
      template: 'laid_out',
      ...(note !== '' && { quote: note }),
      once: `laid out ${seq}`,
      at: clock(),
    })
  })

/** A yes that was said on the phone. */
export interface PhoneYes extends OfPile {
  /** The laying that it was said to. */
  readonly of: number
  /** Who said it. */
  readonly by: string
  /** The day, ms UTC; null: none that could be read. */
  readonly day: number | null
}

/** Throws `laid_anew` where another laying is asked about by now. */
function layingAsked({ laid }: LaidOut, of: number): Laying {
  if (laid?.seq !== of) throw new Failure('laid_anew')
  return laid
}

/** A yes is to what was shown. Throws `laid_anew` where it is another quilt since. */
function requireCurrent({ current }: LaidOut): void {
  if (!current) throw new Failure('laid_anew')
}

/** Keeps what the customer said; `how` they said yes is told to them, so that a yes that is not theirs comes to light. */
async function keepAnswer(
  book: Book,
  said:
    | { readonly kind: 'yes'; readonly body: YesBody; readonly note: string }
    | { readonly kind: 'change'; readonly body: AnswerBody; readonly note: string },
  { idem, who }: { readonly idem: string; readonly who: string | null },
): Promise<void> {
  const { db, row, clock } = book.ledger
  const seq = await write(book, { ...said, item: 0, idem, who })
  await projectLaidOut(db, row.id)
  if (said.kind !== 'yes') return
  const { phone } = said.body
  const { knowledge } = book.at
  const { locale } = knowledge.languages.get(row.language)!
  await queueMail(db, knowledge, {
    pile: row,
    template: 'laid_yes',
    gaps: {
      how: phone ? 'phone' : 'page',
      by: phone?.by ?? '',
      day: dayIn(phone?.day ?? clock(), locale),
    },
    once: `laid yes ${seq}`,
    at: clock(),
  })
}

/**
 * Writes down that the customer said yes on the phone, and tells them so. Throws `laid_anew`, `record_not_now` where
 * they said yes already, `empty_answer`, `answer_too_long` {longest}, `said_day_wrong`, and what `onBook` throws.
 */
export const saidOnPhone = (at: RecordAt, pileId: string, said: PhoneYes): Promise<void> =>
  onBook(at, pileId, { ...said, item: 0 }, async (book) => {
    const { of, day } = said
    const now = await standsNow(book)
    const laid = layingAsked(now, of)
    requireCurrent(now)
    if (now.state === 'yes') throw new Failure('record_not_now')
    const by = readWords(said.by, longestRecordLine)
    const note = readNote(said.note)
    // Where the workshop is, a day may begin before or after that of UTC.
    const earliest = startOf(dayOf(laid.at)) - days(1)
    const latest = startOf(dayOf(book.ledger.clock())) + days(1)
    if (day === null || day < earliest || day > latest) throw new Failure('said_day_wrong')
    await keepAnswer(book, { kind: 'yes', body: { of, phone: { by, day } }, note }, said)
  })

/** What the customer says of the laid-out quilt on their own page. */
export interface LaidSaying {
  readonly kind: 'yes' | 'change'
  /** The laying that they look at. */
  readonly of: number
  /** What to change; with a yes it is left out. */
  readonly note: string
  readonly idem: string
}

/**
 * Keeps it. A yes that is there already stays; a wish may follow it until something of that quilt is sewn. Throws
 * `laid_anew`, `sewing_begun`, `empty_answer`, `answer_too_long` {longest}, and `not_found`.
 */
export const answerLaidOut = (at: RecordAt, pileId: string, said: LaidSaying): Promise<void> => {
  const { kind, of, idem } = said
  return onBook(at, pileId, { item: 0, seen: null, idem, who: null }, async (book) => {
    const now = await standsNow(book)
    layingAsked(now, of)
    const by = { idem, who: null }
    if (kind === 'change') {
      if (now.sewn.length > 0) throw new Failure('sewing_begun')
      return keepAnswer(book, { kind, body: { of }, note: readWords(said.note) }, by)
    }
    requireCurrent(now)
    if (now.state === 'yes') return
    return keepAnswer(book, { kind, body: { of, phone: null }, note: '' }, by)
  })
}
