import type { Json } from './columns.ts'

/** What the bench wrote down of a pile and its garments. */
export interface BenchTables {
  bench_record: BenchRecordTable
  laid_out: LaidOutTable
}

/**
 * `asked`: the customer is to look at it; `yes`: they said so; `change`: they wish for one; `anew`: they were asked, and
 * it is another quilt by now.
 */
export type LaidOutState = 'asked' | 'yes' | 'change' | 'anew'

/** How it stands with a pile's laid-out quilt: derived from its records and where its garments are. */
interface LaidOutTable {
  pile_id: string
  state: LaidOutState
  since: number
}

/** One entry of the bench's records, in order. Never edited: another entry takes it back. */
interface BenchRecordTable {
  pile_id: string
  /** From 1, within the pile. */
  seq: number
  /** The garment's number; 0: the pile's. */
  item: number
  kind: string
  /** What the kind holds beside words and photo. */
  body: Json
  note: string
  photo_id: string | null
  /** The account's id; null: the customer. */
  who: string | null
  at: number
  /** The seq of the entry that it takes back. */
  undoes: number | null
  /** Sent once by the page: the same key again changes nothing. */
  idem: string
}
