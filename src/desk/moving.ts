import type { Clock } from '../base/clock.ts'
import { Failure } from '../base/failures.ts'
import { type Admitted, admit, type Refusal, undoing } from '../custody/admit.ts'
import { follow } from '../custody/follow.ts'
import type { MoveName } from '../custody/move.ts'
import type { Kind } from '../custody/states.ts'
import { readSubjectKey, subjectKey } from '../custody/subject.ts'
import { lengthOf } from '../flow/sense.ts'
import { cleanLine, cleanText } from '../flow/text.ts'
import type { Store } from '../store/open.ts'
import type { KeptEntry } from './custody-entries.ts'
import { reasonLimits } from './decisions.ts'
import { append, type Ledger, onLedger, situationOf } from './ledger.ts'

/** Characters. */
export const longestPlace = 80

/** A move as a page sends it. */
export interface Moving {
  readonly subject: string
  readonly move: MoveName | 'put'
  /** Where it is afterwards; empty: where it was. */
  readonly place: string
  readonly note: string
  /** The id of a photo of the pile; null: none. */
  readonly photo: string | null
  /** What it comes out of; null: of nothing. */
  readonly via: string | null
  /** The newest entry of the subject that the page knew; 0: there was none. */
  readonly seen: number
  /** Sent once by the page: the same key again changes nothing. */
  readonly idem: string
  /** The account's id; null: the customer. */
  readonly who: string | null
}

export interface At {
  readonly store: Store
  readonly clock: Clock
}

/** Throws the failure that tells why a move is not taken. */
function refuse(refusal: Refusal): never {
  switch (refusal.why) {
    case 'not-now':
      throw new Failure('move_not_now')
    case 'guard':
      if (refusal.guard === 'parcel-open') throw new Failure('parcel_isolated')
      throw new Failure('move_too_early', { guard: refusal.guard.replaceAll('-', '_') })
    case 'place':
      throw new Failure('place_missing')
    case 'reason':
      throw new Failure('reason_missing', { shortest: reasonLimits.shortest })
  }
}

const admitted = (result: Admitted | Refusal): Admitted =>
  'why' in result ? refuse(result) : result

/** A place in one line. Throws `answer_too_long` {longest}. */
export function readPlace(raw: string): string {
  const place = cleanLine(raw)
  if (lengthOf(place) > longestPlace)
    throw new Failure('answer_too_long', { longest: longestPlace })
  return place
}

/** A note as it is kept; one too short to say anything is none. Throws `answer_too_long` {longest}. */
function readNote(raw: string): string {
  const note = cleanText(raw)
  const { shortest, longest } = reasonLimits
  if (lengthOf(note) > longest) throw new Failure('answer_too_long', { longest })
  return lengthOf(note) < shortest ? '' : note
}

async function requirePhoto({ db, row }: Ledger, photo: string | null): Promise<void> {
  if (photo === null) return
  const there = await db
    .selectFrom('photo')
    .select('id')
    .where('pile_id', '=', row.id)
    .where('id', '=', photo)
    .executeTakeFirst()
  if (!there) throw new Failure('not_found')
}

/** The entry that the page's key stands for already; undefined: the page sends it for the first time. */
const keptBefore = ({ entries }: Ledger, idem: string): KeptEntry | undefined =>
  entries.find((one) => one.idem === idem)

const lastOf = ({ entries }: Ledger, subject: string): number =>
  entries.findLast((one) => one.subject === subject)?.seq ?? 0

/**
 * Moves a subject on a locked ledger. The same sent twice is one move. Throws `not_found`, `moved_meanwhile`,
 * `move_not_now`, `move_too_early` {guard}, `parcel_isolated`, `place_missing`, `reason_missing` {shortest},
 * `answer_too_long` {longest}.
 */
export async function moveLocked(ledger: Ledger, moving: Moving): Promise<KeptEntry> {
  const before = keptBefore(ledger, moving.idem)
  if (before) return before
  const { subject, move, photo, via, seen, idem, who } = moving
  if (!readSubjectKey(subject)) throw new Failure('not_found')
  const last = lastOf(ledger, subject)
  if (last === 0 && seen > 0) throw new Failure('not_found')
  if (last !== seen) throw new Failure('moved_meanwhile')
  const note = readNote(moving.note)
  await requirePhoto(ledger, photo)
  const asked = { subject, move, note, place: readPlace(moving.place) }
  const { from, to, place } = admitted(admit(asked, situationOf(ledger, via)))
  return append(ledger, {
    subject,
    move,
    from,
    to,
    place,
    via,
    note,
    photo,
    who,
    undoes: null,
    idem,
  })
}

/** Moves a subject. Throws what `moveLocked` throws. */
export const moveSubject = (at: At, pileId: string, moving: Moving): Promise<KeptEntry> =>
  onLedger(at, pileId, moving.who, (ledger) => moveLocked(ledger, moving))

/** The key of the next of a kind; numbers that were ever given are not given again. */
export function nextKey({ entries }: Ledger, kind: Kind, of = 0): string {
  const taken = entries.flatMap(({ subject }) => {
    const one = readSubjectKey(subject)!
    return one.kind === kind && one.of === of ? [one.n] : []
  })
  return subjectKey({ kind, of, n: Math.max(0, ...taken) + 1 })
}

export type Bearing = Omit<Moving, 'subject' | 'seen'> & {
  readonly kind: Kind
  /** Of a bag of leftovers: its garment's number. */
  readonly of?: number
}

/** Brings a new subject into the world on a locked ledger, with the next number of its kind. */
export const bearLocked = async (
  ledger: Ledger,
  { kind, of = 0, ...moving }: Bearing,
): Promise<KeptEntry> =>
  keptBefore(ledger, moving.idem) ??
  (await moveLocked(ledger, { ...moving, subject: nextKey(ledger, kind, of), seen: 0 }))

/** Brings a new subject into the world. Throws what `moveLocked` throws. */
export const bear = (at: At, pileId: string, bearing: Bearing): Promise<KeptEntry> =>
  onLedger(at, pileId, bearing.who, (ledger) => bearLocked(ledger, bearing))

/** What takes the newest entry of a subject back, as a page sends it. */
export type Undoing = Pick<Moving, 'subject' | 'note' | 'seen' | 'idem'> & { readonly who: string }

/**
 * Takes the newest standing entry of a subject back by another that names it. Throws `not_found`,
 * `moved_meanwhile`, `reason_missing` {shortest}, or `undo_not_now` where something else rests on it.
 */
export const undoMove = (at: At, pileId: string, undo: Undoing): Promise<KeptEntry> =>
  onLedger(at, pileId, undo.who, async (ledger) => {
    const { subject, seen, idem, who } = undo
    const before = keptBefore(ledger, idem)
    if (before) return before
    const last = lastOf(ledger, subject)
    if (last === 0) throw new Failure('not_found')
    if (last !== seen) throw new Failure('moved_meanwhile')
    const note = readNote(undo.note)
    if (note === '') throw new Failure('reason_missing', { shortest: reasonLimits.shortest })
    const entry = undoing(subject, ledger.entries)
    // What was expected of the customer is not ours to take back.
    if (!entry || entry.move === 'expect') throw new Failure('undo_not_now')
    const rest = ledger.entries.filter(({ seq }) => seq !== entry.seq)
    const after = follow(rest).get(subject)
    return append(ledger, {
      subject,
      move: 'undo',
      from: entry.to,
      to: after?.state ?? null,
      place: after?.place ?? null,
      via: null,
      note,
      photo: null,
      who,
      undoes: entry.seq,
      idem,
    })
  })
