import { z } from 'zod'
import { subjectCode } from '../custody/subject.ts'
import type { StandingRecord } from './bench-records.ts'
import { aboutWords, tellCustomer } from './messages.ts'
import { bearLocked } from './moving.ts'
import {
  longestRecordLine,
  onBook,
  type RecordAt,
  type Recording,
  readLine,
  readWords,
  write,
} from './recording.ts'

/** Characters of what was found: it is told to the customer in a message. */
export const longestFound = 500

/** A thing that was found in a garment, as a page sends it. Its `note` says what it is. */
export interface Finding extends Recording {
  /** Where in the garment it was. */
  readonly where: string
  /** Where it is kept now. */
  readonly place: string
}

const body = z.object({ subject: z.string(), where: z.string() })

/** The thing's key in custody, and where it was. */
export const readFoundThing = (record: Pick<StandingRecord, 'body'>): z.infer<typeof body> =>
  body.parse(record.body)

/**
 * Keeps a thing that was found in a garment under a number of its own, and writes so to the customer. Throws
 * `empty_answer`, `answer_too_long` {longest}, what a move throws, what a message throws, and what `onBook` throws.
 */
export const logFound = (at: RecordAt, pileId: string, finding: Finding): Promise<void> =>
  onBook(at, pileId, finding, async (book) => {
    const { item, photo, idem, who, place } = finding
    const { ledger } = book
    const { db, row, clock } = ledger
    const words = readWords(finding.note, longestFound)
    const where = readWords(finding.where, longestRecordLine)
    const { subject } = await bearLocked(ledger, {
      kind: 'found',
      move: 'find',
      place: readLine(place),
      note: words,
      photo,
      via: String(item),
      idem: `${idem}-found`,
      who,
    })
    const found = { subject, where }
    await write(book, { item, kind: 'found', body: found, note: words, photo, idem, who })
    const language = at.knowledge.languages.get(row.language)!
    const about = await aboutWords(db, language, row.id, item)
    const code = subjectCode(row.number, subject)
    const text = language.say('messages.found', { about, words, where, code })
    const writing = { item, text, wantsAnswer: false, idem: `${idem}-told`, who }
    await tellCustomer(db, at.knowledge, row, writing, clock())
  })
