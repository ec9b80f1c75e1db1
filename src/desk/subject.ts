import { Failure } from '../base/failures.ts'
import { type Offered, offered, undoing } from '../custody/admit.ts'
import type { Condition } from '../custody/conditions.ts'
import { follow, type Standing, standingEntries } from '../custody/follow.ts'
import { lacking } from '../custody/guards.ts'
import type { Guard } from '../custody/move.ts'
import { moves } from '../custody/moves.ts'
import { readSubjectKey, type Subject, subjectCode } from '../custody/subject.ts'
import type { Db, PileRow } from '../store/schema.ts'
import { boxChecksOf, type CheckedRow } from './box-results.ts'
import { entriesOfPile, type KeptEntry } from './custody-entries.ts'
import { pileFacts, situationOf } from './ledger.ts'
import { parcelsOf } from './parcels.ts'

/** One thing that is looked after, as its page shows it. */
export interface SubjectAtDesk {
  readonly row: PileRow
  readonly key: string
  readonly subject: Subject
  readonly code: string
  readonly standing: Standing
  /** Its garment's; null: it is none. */
  readonly garment: { readonly name: string; readonly kind: string } | null
  readonly entries: readonly KeptEntry[]
  /** The seqs of entries that were taken back. */
  readonly takenBack: ReadonlySet<number>
  readonly offered: readonly Offered[]
  /** What may be born of it: a bag of its leftovers. A thing that was found in it is born by its records. */
  readonly births: readonly { readonly move: 'bag'; readonly shut: readonly Guard[] }[]
  readonly canTakeBack: boolean
  /** Keys of parcels that are open. */
  readonly openParcels: readonly string[]
  readonly checked: CheckedRow | null
  /** Of the parcel that it is. */
  readonly condition: readonly Condition[]
}

/** Throws `not_found`. */
export async function subjectAtDesk(db: Db, row: PileRow, key: string): Promise<SubjectAtDesk> {
  const subject = readSubjectKey(key)
  const all = await entriesOfPile(db, row.id)
  const standing = follow(all).get(key)
  if (!subject || !standing) throw new Failure('not_found')
  const item = subject.kind === 'leftover' ? subject.of : subject.n
  const isCloth = subject.kind === 'garment' || subject.kind === 'leftover'
  const garment = isCloth
    ? await db
        .selectFrom('garment')
        .select(['name', 'kind'])
        .where('pile_id', '=', row.id)
        .where('item', '=', item)
        .executeTakeFirst()
    : undefined
  const entries = all.filter((one) => one.subject === key)
  const stand = new Set(standingEntries(entries).map(({ seq }) => seq))
  const situation = situationOf({ facts: await pileFacts(db, row), entries: all })
  const parcels = await parcelsOf(db, row.id)
  const newest = undoing(key, all)
  const births = moves.filter(({ move }) => move === 'bag')
  return {
    row,
    key,
    subject,
    code: subjectCode(row.number, key),
    standing,
    garment: garment ?? null,
    entries,
    takenBack: new Set(
      entries.filter(({ seq, move }) => move !== 'undo' && !stand.has(seq)).map(({ seq }) => seq),
    ),
    offered: offered(key, situation),
    births:
      subject.kind === 'garment'
        ? births.map((move) => ({
            move: move.move as 'bag',
            shut: lacking(move, `${key}-L1`, { ...situation, via: key }),
          }))
        : [],
    canTakeBack: newest !== null && newest.move !== 'expect',
    openParcels: parcels
      .filter(({ state }) => state === 'arrived' || state === 'unpacked')
      .map((parcel) => parcel.subject),
    checked: (await boxChecksOf(db, row.id)).get(key) ?? null,
    condition: parcels.find((parcel) => parcel.subject === key)?.condition ?? [],
  }
}
