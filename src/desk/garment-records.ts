import { Failure } from '../base/failures.ts'
import { follow, type Standing } from '../custody/follow.ts'
import { type CutLack, cutFacts, lackingToCut } from '../custody/guards.ts'
import type { Knowledge } from '../intake/knowledge.ts'
import type { Garment } from '../intake/pile.ts'
import type { Db, PileRow } from '../store/schema.ts'
import {
  type BenchRecord,
  newestRecord,
  openIncidents,
  recordsOf,
  type StandingRecord,
  standingRecords,
} from './bench-records.ts'
import { entriesOfPile } from './custody-entries.ts'
import { releasedOf } from './cutting.ts'
import { pileFacts } from './ledger.ts'
import { planMarksOf } from './plan-marks.ts'
import { mayTakeBack } from './recording.ts'
import { pileAsKnown } from './spots.ts'

/** The records of one garment, as its page shows them. */
export interface GarmentRecords {
  readonly row: PileRow
  readonly garment: Garment
  readonly standing: Standing
  /** Of this garment, oldest first, those that were taken back too. */
  readonly records: readonly BenchRecord[]
  /** The seqs of those that stand, and of those that may be taken back now. */
  readonly stand: ReadonlySet<number>
  readonly undoable: ReadonlySet<number>
  readonly newest: number
  readonly lacks: readonly CutLack[]
  readonly release: ReturnType<typeof releasedOf>
  /** The incidents that stop it. */
  readonly open: readonly StandingRecord[]
  /** Classes of interfacing that are in use. */
  readonly interfacings: readonly string[]
}

/** Throws `not_found` where the pile has no such garment, or it was never expected. */
export async function garmentRecords(
  db: Db,
  knowledge: Knowledge,
  row: PileRow,
  item: number,
): Promise<GarmentRecords> {
  const entries = await entriesOfPile(db, row.id)
  const standing = follow(entries).get(String(item))
  const pile = await pileAsKnown(db, knowledge, row, await planMarksOf(db, row.id))
  const garment = pile.garments.find(({ n, dropped }) => n === item && !dropped)
  if (!standing || !garment) throw new Failure('not_found')
  const all = await recordsOf(db, row.id)
  const stand = standingRecords(all)
  const records = all.filter((one) => one.item === item)
  const book = { records: all, ledger: { entries } }
  return {
    row,
    garment,
    standing,
    records,
    stand: new Set(stand.map(({ seq }) => seq)),
    undoable: new Set(
      stand.flatMap((one) => (one.item === item && mayTakeBack(one, book) ? [one.seq] : [])),
    ),
    newest: newestRecord(all, item),
    lacks: lackingToCut(cutFacts(await pileFacts(db, row), item)),
    release: releasedOf(stand, item),
    open: openIncidents(stand).filter((one) => one.item === item),
    interfacings: knowledge.grading.interfacings.map((one) => one.class),
  }
}
