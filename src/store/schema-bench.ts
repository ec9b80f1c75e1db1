import type { Json } from './columns.ts'

/** What the bench wrote down of a pile's garments. */
export interface BenchTables {
  bench_record: BenchRecordTable
}

/** One entry of the bench's records, in order. Never edited: another entry takes it back. */
interface BenchRecordTable {
  pile_id: string
  /** From 1, within the pile. */
  seq: number
  /** The garment's number. */
  item: number
  kind: string
  /** What the kind holds beside words and photo. */
  body: Json
  note: string
  photo_id: string | null
  /** The account's id. */
  who: string
  at: number
  /** The seq of the entry that it takes back. */
  undoes: number | null
  /** Sent once by the page: the same key again changes nothing. */
  idem: string
}
