import type { Flag, Json } from './columns.ts'

/** Where everything is, and what the workshop found of it. */
export interface CustodyTables {
  fact_set: FactSetTable
  custody_move: CustodyMoveTable
  custody: CustodyTable
  parcel: ParcelTable
  box_check: BoxCheckTable
  sign_off: SignOffTable
  day_count: DayCountTable
  day_count_line: DayCountLineTable
}

/** Who may set a fact: staff at the review, the bench with the garment in its hands. */
export type FactSource = 'staff' | 'bench'

/** A fact of a garment that the workshop set, whatever the customer said. Never edited: it is undone. */
interface FactSetTable {
  id: string
  pile_id: string
  item: number
  fact: string
  value: string
  source: FactSource
  reason: string
  /** The account's id. */
  who: string
  at: number
  undone_at: number | null
  undone_by: string | null
}

/** What became of a garment, a bag of leftovers, a thing or a parcel, in order. Never edited: another entry undoes it. */
interface CustodyMoveTable {
  pile_id: string
  /** From 1, within the pile. */
  seq: number
  subject: string
  move: string
  from_state: string | null
  to_state: string | null
  /** Null: it is not in the house. */
  place: string | null
  /** The key of what it came out of. */
  via: string | null
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

/** Where each subject is: derived from the entries, written with them. */
interface CustodyTable {
  pile_id: string
  subject: string
  kind: string
  /** "K7-3", "K7-3-L1". */
  code: string
  state: string
  whereabouts: string
  place: string | null
  since: number
  last_seq: number
}

interface ParcelTable {
  pile_id: string
  /** "P1" on its way here, "Q1" on its way home. */
  subject: string
  carrier: string
  tracking: string
  /** In the shop's currency, hundredths; null: not told. */
  insured: number | null
  posted_at: number | null
  expected_at: number | null
  arrived_at: number | null
  /** Words with a comma between; empty: not looked at yet. */
  condition: string
}

export type BoxResult = 'matched' | 'missing' | 'different' | 'extra'

/** What the box check found of one garment, or of a thing that was not on the list. The newest counts. */
interface BoxCheckTable {
  id: string
  pile_id: string
  subject: string
  result: BoxResult
  /** Facts that differ, with a comma between. */
  differs: string
  /** Words with a comma between. */
  condition: string
  note: string
  photos: Json
  who: string
  at: number
}

/** That the quilt is done and the customer said yes, and what they chose for what is left over. */
interface SignOffTable {
  id: string
  pile_id: string
  leftovers: string
  note: string
  who: string
  at: number
  undone_at: number | null
  undone_by: string | null
}

/** Everything that should be in the house, counted at the end of a day. */
interface DayCountTable {
  id: string
  who: string
  at: number
  note: string
  expected: number
  seen: number
}

interface DayCountLineTable {
  count_id: string
  pile_id: string
  subject: string
  place: string | null
  seen: Flag
}
