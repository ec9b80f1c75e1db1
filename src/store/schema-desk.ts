/** Whom a pile waits on that its customer gave to the workshop; `held`: the workshop put it on hold. */
export type WaitsOn = 'us' | 'customer' | 'held' | 'nobody'

/** What the desk's queue is sorted by: derived from the pile's decisions and questions. */
export interface WaitingTable {
  pile_id: string
  /** The pile's. */
  number: number
  on_whom: WaitsOn
  since: number
  /** Garments for a person's eyes that nobody decided of. */
  eyes: number
  /** Questions that nobody has seen to. */
  questions: number
  /** The last of the whole pile. */
  verdict: string | null
  need_by: number | null
}

/** What staff decided of one reason of a garment's grade. */
export interface FlagDecisionTable {
  id: string
  pile_id: string
  item: number
  /** The reason's code. */
  flag: string
  verdict: string
  reason: string
  /** The account's id. */
  who: string
  at: number
}
