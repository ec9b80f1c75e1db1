import { Failure } from '../base/failures.ts'
import type { State } from '../custody/states.ts'
import { openIncidents, standingRecords } from './bench-records.ts'
import {
  onBook,
  type RecordAt,
  type Recording,
  readWords,
  requireState,
  write,
} from './recording.ts'

/** States in which something can happen to a garment here. */
const inHouse: readonly State[] = [
  'received',
  'isolated',
  'held',
  'torn-down',
  'stabilised',
  'cut',
  'sewn',
  'withdrawn',
  'missing',
]

/**
 * Keeps what happened to a garment, and stops it until staff decide. Throws `record_not_now`, `empty_answer`,
 * `answer_too_long` {longest}, and what `onBook` throws.
 */
export const reportIncident = (at: RecordAt, pileId: string, recording: Recording): Promise<void> =>
  onBook(at, pileId, recording, async (book) => {
    const { item, photo, idem, who } = recording
    requireState(book, inHouse)
    const note = readWords(recording.note)
    await write(book, { item, kind: 'incident', body: {}, note, photo, idem, who })
  })

/**
 * Lets a stopped garment go on, with what was decided. Throws `record_not_now` where nothing stopped it,
 * `empty_answer`, `answer_too_long` {longest}, and what `onBook` throws.
 */
export const settleIncident = (at: RecordAt, pileId: string, recording: Recording): Promise<void> =>
  onBook(at, pileId, recording, async (book) => {
    const { item, photo, idem, who } = recording
    const open = openIncidents(standingRecords(book.records))
    if (!open.some((one) => one.item === item)) throw new Failure('record_not_now')
    const note = readWords(recording.note)
    await write(book, { item, kind: 'settled', body: {}, note, photo, idem, who })
  })
