import { Failure } from '../base/failures.ts'
import { follow, standingEntries } from '../custody/follow.ts'
import type { State } from '../custody/states.ts'
import { lengthOf } from '../flow/sense.ts'
import { cleanLine, cleanText } from '../flow/text.ts'
import type { Knowledge } from '../intake/knowledge.ts'
import {
  appendRecord,
  type BenchRecord,
  newestRecord,
  ofKind,
  type RecordDraft,
  recordsOf,
  standingRecords,
} from './bench-records.ts'
import { reasonLimits } from './decisions.ts'
import { factSetsOf, newestSet, undoFactSet } from './fact-sets.ts'
import { mayTakeBackLaid, projectLaidOut } from './laid-out.ts'
import { type Ledger, onLedger } from './ledger.ts'
import type { At } from './moving.ts'
import { projectKnown, setFactsLocked } from './set-facts.ts'

/** Characters of a single line: a lot, a place, how it was washed. */
export const longestRecordLine = 200

/** What every form of the records brings. */
export interface Recording {
  /** The garment's number. */
  readonly item: number
  readonly note: string
  /** The id of a photo of the pile; null: none. */
  readonly photo: string | null
  /** The newest entry of the garment that the page knew; 0: there was none. */
  readonly seen: number
  /** Sent once by the page: the same key again changes nothing. */
  readonly idem: string
  /** The account's id. */
  readonly who: string
}

export type RecordAt = At & { readonly knowledge: Knowledge }

/** A pile's records while it is locked. */
export interface Book {
  readonly at: RecordAt
  readonly ledger: Ledger
  readonly records: readonly BenchRecord[]
  /** Of the garment that is written of; null: it is written of the pile. */
  readonly state: State | null
}

/** Words that say something. Throws `empty_answer` or `answer_too_long` {longest}. */
export function readWords(raw: string, longest: number = reasonLimits.longest): string {
  const words = longest === longestRecordLine ? cleanLine(raw) : cleanText(raw)
  if (lengthOf(words) > longest) throw new Failure('answer_too_long', { longest })
  if (lengthOf(words) < reasonLimits.shortest) throw new Failure('empty_answer')
  return words
}

/** A note that may be left out. Throws `answer_too_long` {longest}. */
export function readNote(raw: string): string {
  const note = cleanText(raw)
  const { longest } = reasonLimits
  if (lengthOf(note) > longest) throw new Failure('answer_too_long', { longest })
  return note
}

/** A line that may be left out. Throws `answer_too_long` {longest}. */
export function readLine(raw: string): string {
  const line = cleanLine(raw)
  if (lengthOf(line) > longestRecordLine) {
    throw new Failure('answer_too_long', { longest: longestRecordLine })
  }
  return line
}

/**
 * Runs `work` on a locked pile's records of a garment, or of the pile where `item` is 0, once for each key that a page
 * sends. `who` is null where the customer writes. Throws `not_found`, or `decided_meanwhile` where somebody wrote of the
 * same since the page was shown.
 */
export const onBook = (
  at: RecordAt,
  pileId: string,
  {
    item,
    seen,
    idem,
    who,
  }: Pick<Recording, 'item' | 'idem'> & {
    /** Null: whatever was written meanwhile. */
    readonly seen: number | null
    readonly who: string | null
  },
  work: (book: Book) => Promise<void>,
): Promise<void> =>
  onLedger(at, pileId, who, async (ledger) => {
    const records = await recordsOf(ledger.db, pileId)
    if (records.some((one) => one.idem === idem)) return
    const state = follow(ledger.entries).get(String(item))?.state ?? null
    if (item !== 0 && !state) throw new Failure('not_found')
    if (seen !== null && newestRecord(records, item) !== seen)
      throw new Failure('decided_meanwhile')
    await work({ at, ledger, records, state })
  })

export const write = (
  { ledger: { db, row, clock } }: Pick<Book, 'ledger'>,
  draft: RecordDraft,
): Promise<number> => appendRecord(db, row.id, draft, clock())

/** Throws `record_not_now` where the garment is in none of these states. */
export function requireState({ state }: Book, states: readonly State[]): void {
  if (!state || !states.includes(state)) throw new Failure('record_not_now')
}

/**
 * Sets facts of a garment as the bench found them, on what is known by now, and grades the pile anew. Returns the
 * ids of what was set.
 */
export async function setAsFound(
  { at, ledger: { db, row } }: Book,
  {
    item,
    facts,
    reason,
    who,
  }: { item: number; facts: Readonly<Record<string, string>>; reason: string; who: string },
): Promise<string[]> {
  const before = await factSetsOf(db, row.id)
  const seen = newestSet(before, item)
  await setFactsLocked(db, at, row.id, { item, facts, source: 'bench', reason, who, seen })
  await projectKnown(db, at.knowledge, row)
  const known = new Set(before.map(({ id }) => id))
  return (await factSetsOf(db, row.id)).flatMap(({ id }) => (known.has(id) ? [] : [id]))
}

/** What is done by one person alone and may be taken back while nothing rests on it. */
const takenBack = ['ask', 'release', 'test', 'wash', 'laid', 'yes'] as const

/** Whether a standing entry may be taken back now: the newest of its kind, and no cut rests on it. */
export function mayTakeBack(
  record: BenchRecord,
  {
    records,
    ledger,
  }: { readonly records: readonly BenchRecord[]; readonly ledger: Pick<Ledger, 'entries'> },
): boolean {
  const { kind, item, seq } = record
  if (!takenBack.some((one) => one === kind)) return false
  const standing = standingRecords(records)
  if (kind === 'undo' || ofKind(standing, item, kind).at(-1)?.seq !== seq) return false
  if (kind === 'test' || kind === 'wash') return true
  if (kind === 'laid' || kind === 'yes') return mayTakeBackLaid(record, standing, ledger.entries)
  const mine = ledger.entries.filter(({ subject }) => subject === String(item))
  const wasCut = standingEntries(mine).some(({ to }) => to === 'cut')
  const answered = ofKind(standing, item, 'release').some((one) => one.seq > seq)
  return !wasCut && !(kind === 'ask' && answered)
}

/**
 * Takes an entry back by another that names it; what it had set of the garment is undone. Throws `not_found`,
 * `decided_meanwhile`, `reason_missing` {shortest}, or `undo_not_now` where something rests on it.
 */
export const takeBackRecord = (
  at: RecordAt,
  pileId: string,
  { seq, ...recording }: Recording & { readonly seq: number },
): Promise<void> =>
  onBook(at, pileId, recording, async (book) => {
    const { item, idem, who } = recording
    const note = readNote(recording.note)
    if (lengthOf(note) < reasonLimits.shortest) {
      throw new Failure('reason_missing', { shortest: reasonLimits.shortest })
    }
    const record = standingRecords(book.records).find((one) => one.seq === seq && one.item === item)
    if (!record || !mayTakeBack(record, book)) throw new Failure('undo_not_now')
    await write(book, { item, kind: 'undo', body: {}, note, undoes: seq, idem, who })
    await undoFacts(book, record, who)
    if (item === 0) await projectLaidOut(book.ledger.db, pileId)
  })

async function undoFacts({ at, ledger }: Book, { body }: BenchRecord, who: string): Promise<void> {
  const { db, row, clock } = ledger
  const { facts = [] } = body as { facts?: readonly string[] }
  const sets = await factSetsOf(db, row.id)
  const standing = sets.filter(({ id, undone }) => facts.includes(id) && !undone)
  for (const [n, { id }] of standing.entries()) {
    await undoFactSet(db, row.id, id, { who, at: Math.max(clock(), newestSet(sets) + 1) + n })
  }
  if (standing.length > 0) await projectKnown(db, at.knowledge, row)
}
