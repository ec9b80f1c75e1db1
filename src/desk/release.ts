import { Failure } from '../base/failures.ts'
import { cutFacts, lackingToCut } from '../custody/guards.ts'
import type { State } from '../custody/states.ts'
import { standingRecords } from './bench-records.ts'
import { releasedOf } from './cutting.ts'
import {
  onBook,
  type RecordAt,
  type Recording,
  readNote,
  requireState,
  write,
} from './recording.ts'

/** States before the cut in which a garment is in the house and was looked at. */
const beforeCut: readonly State[] = ['held', 'torn-down', 'stabilised']

/**
 * Asks that a garment may be cut. Throws `record_not_now` where it is not on its way to the cut, or is asked for
 * already; and what `onBook` throws.
 */
export const askRelease = (at: RecordAt, pileId: string, recording: Recording): Promise<void> =>
  onBook(at, pileId, recording, async (book) => {
    const { item, photo, idem, who } = recording
    requireState(book, beforeCut)
    if (releasedOf(standingRecords(book.records), item).asked) throw new Failure('record_not_now')
    await write(book, {
      item,
      kind: 'ask',
      body: {},
      note: readNote(recording.note),
      photo,
      idem,
      who,
    })
  })

/**
 * Releases a garment for cutting, after somebody else asked. Throws `release_same_person`, `release_too_early`
 * {lack}, `record_not_now`, and what `onBook` throws.
 */
export const release = (at: RecordAt, pileId: string, recording: Recording): Promise<void> =>
  onBook(at, pileId, recording, async (book) => {
    const { item, photo, idem, who } = recording
    requireState(book, beforeCut)
    const { asked, released } = releasedOf(standingRecords(book.records), item)
    if (released) throw new Failure('record_not_now')
    if (asked?.who === who) throw new Failure('release_same_person')
    const facts = cutFacts(book.ledger.facts, item)
    const lack = lackingToCut(facts).find((one) => one !== 'released')
    if (lack) throw new Failure('release_too_early', { lack })
    await write(book, {
      item,
      kind: 'release',
      body: {},
      note: readNote(recording.note),
      photo,
      idem,
      who,
    })
  })
