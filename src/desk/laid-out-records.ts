import { follow } from '../custody/follow.ts'
import type { State } from '../custody/states.ts'
import { readSubjectKey } from '../custody/subject.ts'
import type { Db, PileRow } from '../store/schema.ts'
import { type BenchRecord, newestRecord, recordsOf, standingRecords } from './bench-records.ts'
import { entriesOfPile } from './custody-entries.ts'
import type { NamedGarment } from './garment-words.ts'
import { type LaidOut, laidOutIn } from './laid-out.ts'
import { mayTakeBack } from './recording.ts'

/** A garment on its way into the quilt. */
export interface OnTheTable extends NamedGarment {
  readonly state: State
  /** Its pieces are cut, or sewn by now. */
  readonly cut: boolean
}

/** The records of a pile's laid-out quilt, as the workshop's page shows them. */
export interface LaidOutRecords {
  readonly row: PileRow
  readonly now: LaidOut
  /** Of the pile, oldest first, those that were taken back too. */
  readonly records: readonly BenchRecord[]
  /** The seqs of those that stand, and of those that may be taken back now. */
  readonly stand: ReadonlySet<number>
  readonly undoable: ReadonlySet<number>
  readonly newest: number
  readonly garments: readonly OnTheTable[]
}

const onTheWay: readonly State[] = ['received', 'isolated', 'held', 'torn-down', 'stabilised']
const cut: readonly State[] = ['cut', 'sewn']

export async function laidOutRecords(db: Db, row: PileRow): Promise<LaidOutRecords> {
  const all = await recordsOf(db, row.id)
  const standing = standingRecords(all)
  const entries = await entriesOfPile(db, row.id)
  const named = await db
    .selectFrom('garment')
    .select(['item', 'name', 'kind'])
    .where('pile_id', '=', row.id)
    .execute()
  const book = { records: all, ledger: { entries } }
  return {
    row,
    now: await laidOutIn(db, row.id, standing),
    records: all.filter(({ item }) => item === 0),
    stand: new Set(standing.map(({ seq }) => seq)),
    undoable: new Set(
      standing.flatMap((one) => (one.item === 0 && mayTakeBack(one, book) ? [one.seq] : [])),
    ),
    newest: newestRecord(all, 0),
    garments: [...follow(entries).values()]
      .flatMap(({ subject, state }) => {
        const { kind, n } = readSubjectKey(subject)!
        const isCut = cut.includes(state)
        if (kind !== 'garment' || !(isCut || onTheWay.includes(state))) return []
        const garment = named.find(({ item }) => item === n)
        return [
          { item: n, name: garment?.name ?? '', kind: garment?.kind ?? '', state, cut: isCut },
        ]
      })
      .sort((a, b) => a.item - b.item),
  }
}
