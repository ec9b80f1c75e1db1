import { Failure } from '../base/failures.ts'
import type { Db } from '../store/schema.ts'

/**
 * What the bench writes down. `ask` and `release` let a garment be cut; an `incident` stops it until it is `settled`.
 * Of the pile itself: the quilt is `laid` out, and its customer says `yes` or wishes for a `change`.
 */
export const recordKinds = [
  'ask',
  'release',
  'test',
  'found',
  'wash',
  'incident',
  'settled',
  'laid',
  'yes',
  'change',
] as const

export type RecordKind = (typeof recordKinds)[number]

/** An entry as it was appended. Entries are never edited; another takes one back. */
export interface BenchRecord {
  /** From 1, within the pile. */
  readonly seq: number
  /** The garment's number; 0: the pile's. */
  readonly item: number
  readonly kind: RecordKind | 'undo'
  /** What the kind holds beside words and photo; each kind's module reads its own. */
  readonly body: unknown
  readonly note: string
  /** The id of a photo; null: none. */
  readonly photo: string | null
  /** The account's id and name; null: the customer. */
  readonly who: { readonly id: string; readonly name: string } | null
  readonly at: number
  /** The seq of the entry that it takes back. */
  readonly undoes: number | null
  readonly idem: string
}

/** All of one pile, in order. */
export async function recordsOf(db: Db, pileId: string): Promise<BenchRecord[]> {
  const rows = await db
    .selectFrom('bench_record')
    .leftJoin('account', 'account.id', 'bench_record.who')
    .selectAll('bench_record')
    .select('account.name')
    .where('pile_id', '=', pileId)
    .orderBy('seq')
    .execute()
  return rows.map(({ photo_id, who, name, kind, body, pile_id: _, ...row }) => ({
    ...row,
    kind: kind as BenchRecord['kind'],
    body: JSON.parse(body) as unknown,
    photo: photo_id,
    who: who === null ? null : { id: who, name: name ?? '' },
  }))
}

export type StandingRecord = BenchRecord & { readonly kind: RecordKind }

/** Those that were not taken back. */
export function standingRecords(records: readonly BenchRecord[]): StandingRecord[] {
  const gone = new Set(records.flatMap(({ undoes }) => undoes ?? []))
  return records.filter((one): one is StandingRecord => one.kind !== 'undo' && !gone.has(one.seq))
}

/** Of one garment, or of the pile, and of one kind. */
export const ofKind = <R extends BenchRecord>(
  records: readonly R[],
  item: number,
  kind: RecordKind,
): R[] => records.filter((one) => one.item === item && one.kind === kind)

/** The seq of the newest entry of a garment, or of the pile; 0: there is none. */
export const newestRecord = (records: readonly BenchRecord[], item: number): number =>
  records.findLast((one) => one.item === item)?.seq ?? 0

/** Incidents that nobody settled. One is settled for good: the next is an incident of its own. */
export const openIncidents = (standing: readonly StandingRecord[]): StandingRecord[] =>
  standing.filter(
    ({ kind, item, seq }) =>
      kind === 'incident' && !ofKind(standing, item, 'settled').some((one) => one.seq > seq),
  )

/** Numbers of garments that an incident stopped. */
export const stoppedItems = (standing: readonly StandingRecord[]): number[] => [
  ...new Set(openIncidents(standing).map(({ item }) => item)),
]

/** An entry before it has its place in the order. */
export type RecordDraft = Omit<BenchRecord, 'seq' | 'at' | 'who' | 'undoes' | 'photo'> & {
  readonly photo?: string | null
  readonly undoes?: number
  /** The account's id; null: the customer. */
  readonly who: string | null
}

/** Appends an entry in the caller's transaction, on a pile that it has locked. Throws `not_found` for another pile's photo. */
export async function appendRecord(
  db: Db,
  pileId: string,
  { photo = null, undoes, body, ...draft }: RecordDraft,
  now: number,
): Promise<number> {
  if (photo !== null) {
    const there = await db
      .selectFrom('photo')
      .select('id')
      .where('pile_id', '=', pileId)
      .where('id', '=', photo)
      .executeTakeFirst()
    if (!there) throw new Failure('not_found')
  }
  const last = await db
    .selectFrom('bench_record')
    .select(['seq', 'at'])
    .where('pile_id', '=', pileId)
    .orderBy('seq', 'desc')
    .limit(1)
    .executeTakeFirst()
  const seq = (last?.seq ?? 0) + 1
  await db
    .insertInto('bench_record')
    .values({
      ...draft,
      pile_id: pileId,
      seq,
      body: JSON.stringify(body),
      photo_id: photo,
      // A clock that was set back may not change the order.
      at: Math.max(now, last?.at ?? 0),
      undoes: undoes ?? null,
    })
    .execute()
  return seq
}
