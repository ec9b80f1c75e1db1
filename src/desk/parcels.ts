import { days } from '../base/clock.ts'
import { Failure } from '../base/failures.ts'
import { type Condition, conditions, isolates, readConditions } from '../custody/conditions.ts'
import type { State } from '../custody/states.ts'
import { readSubjectKey } from '../custody/subject.ts'
import { lengthOf } from '../flow/sense.ts'
import { cleanLine } from '../flow/text.ts'
import type { Shop } from '../intake/shop.ts'
import type { Db } from '../store/schema.ts'
import type { KeptEntry } from './custody-entries.ts'
import { type Ledger, onLedger } from './ledger.ts'
import { type At, bearLocked, moveLocked } from './moving.ts'

/** Characters of a carrier's name or a tracking number. */
const longestLine = 80

/** The most that a parcel may be insured for, in hundredths. */
const mostInsured = 100_000_000

export interface Parcel {
  readonly subject: string
  readonly state: State
  readonly place: string | null
  /** The seq of its newest entry. */
  readonly last: number
  readonly carrier: string
  readonly tracking: string
  /** Hundredths of the shop's currency; null: not told. */
  readonly insured: number | null
  readonly postedAt: number | null
  readonly expectedAt: number | null
  readonly arrivedAt: number | null
  readonly condition: readonly Condition[]
}

const rowsOf = (db: Db) =>
  db
    .selectFrom('parcel')
    .innerJoin('custody', (join) =>
      join
        .onRef('custody.pile_id', '=', 'parcel.pile_id')
        .onRef('custody.subject', '=', 'parcel.subject'),
    )
    .selectAll('parcel')
    .select(['custody.state', 'custody.place', 'custody.last_seq'])

type ParcelRow = Awaited<ReturnType<ReturnType<typeof rowsOf>['execute']>>[number]

const parcelOf = (row: ParcelRow): Parcel => ({
  subject: row.subject,
  state: row.state as State,
  place: row.place,
  last: row.last_seq,
  carrier: row.carrier,
  tracking: row.tracking,
  insured: row.insured,
  postedAt: row.posted_at,
  expectedAt: row.expected_at,
  arrivedAt: row.arrived_at,
  condition: readConditions(row.condition),
})

/** Of one pile, those on their way home too, in the order in which they were announced. */
export async function parcelsOf(db: Db, pileId: string): Promise<Parcel[]> {
  const rows = await rowsOf(db).where('parcel.pile_id', '=', pileId).execute()
  return rows
    .map(parcelOf)
    .sort((a, b) => readSubjectKey(a.subject)!.n - readSubjectKey(b.subject)!.n)
}

/** A parcel as somebody announces it. Days are milliseconds UTC. */
export interface Announcing {
  readonly carrier: string
  readonly tracking: string
  readonly insured: number | null
  readonly postedAt: number | null
  readonly expectedAt: number | null
  /** The account's id; null: the customer says so. */
  readonly who: string | null
  readonly idem: string
}

function line(raw: string): string {
  const text = cleanLine(raw)
  if (lengthOf(text) > longestLine) throw new Failure('answer_too_long', { longest: longestLine })
  return text
}

/** Announces a parcel on a locked ledger. The day it is expected follows from the day it was posted. */
async function announceLocked(
  ledger: Ledger,
  shop: Pick<Shop, 'parcel_days'>,
  announcing: Announcing,
): Promise<KeptEntry> {
  const { insured, postedAt, who, idem } = announcing
  if (insured !== null && (insured < 0 || insured > mostInsured)) {
    throw new Failure('number_out_of_range', { min: 0, max: mostInsured / 100 })
  }
  const carrier = line(announcing.carrier)
  const tracking = line(announcing.tracking)
  const known = ledger.entries.some((one) => one.idem === idem)
  const entry = await bearLocked(ledger, {
    kind: 'parcel',
    move: 'announce',
    place: '',
    note: '',
    photo: null,
    via: null,
    idem,
    who,
  })
  if (known) return entry
  const { db, row, clock } = ledger
  const expected = announcing.expectedAt ?? (postedAt ?? clock()) + days(shop.parcel_days)
  await db
    .insertInto('parcel')
    .values({
      pile_id: row.id,
      subject: entry.subject,
      carrier,
      tracking,
      insured,
      posted_at: postedAt,
      expected_at: expected,
      arrived_at: null,
      condition: '',
    })
    .execute()
  return entry
}

/** Announces a parcel. The same sent twice is one. Throws `answer_too_long`, `number_out_of_range`, `not_found`. */
export const announce = (
  at: At,
  shop: Pick<Shop, 'parcel_days'>,
  pileId: string,
  announcing: Announcing,
): Promise<KeptEntry> =>
  onLedger(at, pileId, announcing.who, (ledger) => announceLocked(ledger, shop, announcing))

/** A parcel as it stands on the desk. */
export interface Arriving {
  readonly condition: readonly string[]
  readonly place: string
  readonly note: string
  /** What a condition is called, in the words of who writes. */
  readonly tell: (condition: readonly Condition[]) => string
  /** The parcel's newest entry that the page knew. */
  readonly seen: number
  readonly idem: string
  readonly who: string
}

/** Throws `nothing_ticked`, `none_with_others` or `answer_not_offered`. */
export function readFound(ticked: readonly string[]): Condition[] {
  if (ticked.length === 0) throw new Failure('nothing_ticked')
  const found = ticked.map((one) => conditions.find((known) => known === one))
  if (found.some((one) => one === undefined)) throw new Failure('answer_not_offered')
  if (ticked.includes('fine') && ticked.length > 1) throw new Failure('none_with_others')
  return conditions.filter((one) => found.includes(one))
}

/** It has come, and how it looks; what is wet, mouldy, soiled or infested is isolated at once. */
async function arriveLocked(ledger: Ledger, subject: string, arriving: Arriving): Promise<void> {
  const { place, note, seen, idem, who } = arriving
  const condition = readFound(arriving.condition)
  if (ledger.entries.some((one) => one.idem === idem)) return
  const same = { subject, place, photo: null, via: null, who }
  const { seq, at } = await moveLocked(ledger, { ...same, move: 'arrive', note, seen, idem })
  await ledger.db
    .updateTable('parcel')
    .set({ arrived_at: at, condition: condition.join(',') })
    .where('pile_id', '=', ledger.row.id)
    .where('subject', '=', subject)
    .execute()
  if (!isolates(condition)) return
  const reason = [arriving.tell(condition), note].filter(Boolean).join(': ')
  await moveLocked(ledger, {
    ...same,
    move: 'isolate',
    note: reason,
    seen: seq,
    idem: `${idem}-isolate`,
  })
}

/** A parcel that was announced is here. Throws what a move throws, and what `readFound` throws. */
export const arrive = (
  at: At,
  pileId: string,
  subject: string,
  arriving: Arriving,
): Promise<void> =>
  onLedger(at, pileId, arriving.who, (ledger) => arriveLocked(ledger, subject, arriving))

/** A parcel is here that nobody announced, or garments were brought by hand. */
export const arriveUnannounced = (
  at: At,
  shop: Pick<Shop, 'parcel_days'>,
  pileId: string,
  announcing: Announcing,
  arriving: Omit<Arriving, 'seen' | 'idem'>,
): Promise<void> =>
  onLedger(at, pileId, arriving.who, async (ledger) => {
    const { subject, seq } = await announceLocked(ledger, shop, announcing)
    const idem = `${announcing.idem}-arrive`
    await arriveLocked(ledger, subject, { ...arriving, seen: seq, idem })
  })

/** A parcel home is packed; what goes with it is moved by itself. The same sent twice is one. */
export const packHome = (
  at: At,
  pileId: string,
  { carrier, tracking, insured, who, idem }: Announcing,
  place: string,
): Promise<void> =>
  onLedger(at, pileId, who, async (ledger) => {
    if (ledger.entries.some((one) => one.idem === idem)) return
    const entry = await bearLocked(ledger, {
      kind: 'outgoing',
      move: 'pack',
      place,
      note: '',
      photo: null,
      via: null,
      idem,
      who,
    })
    await ledger.db
      .insertInto('parcel')
      .values({
        pile_id: pileId,
        subject: entry.subject,
        carrier: line(carrier),
        tracking: line(tracking),
        insured,
        posted_at: null,
        expected_at: null,
        arrived_at: null,
        condition: '',
      })
      .execute()
  })

export interface OverdueParcel {
  readonly pile: number
  readonly customer: string | null
  readonly subject: string
  readonly carrier: string
  readonly tracking: string
  readonly expectedAt: number
}

/** Announced, and not here so many days after they were expected; the longest overdue first. */
export async function overdueParcels(
  db: Db,
  now: number,
  { parcel_overdue_days }: Pick<Shop, 'parcel_overdue_days'>,
  most = 100,
): Promise<OverdueParcel[]> {
  const rows = await rowsOf(db)
    .innerJoin('pile', 'pile.id', 'parcel.pile_id')
    .leftJoin('standing', 'standing.pile_id', 'parcel.pile_id')
    .select(['pile.number', 'standing.contact_name'])
    .where('custody.kind', '=', 'parcel')
    .where('custody.state', '=', 'announced')
    .where('parcel.expected_at', '<', now - days(parcel_overdue_days))
    .orderBy('parcel.expected_at')
    .limit(most)
    .execute()
  return rows.map(({ number, contact_name, subject, carrier, tracking, expected_at }) => ({
    pile: number,
    customer: contact_name,
    subject,
    carrier,
    tracking,
    expectedAt: expected_at!,
  }))
}
