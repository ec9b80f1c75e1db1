import type { Database } from './schema.ts'

/**
 * Whose a table's rows are: a pile's go with it; a person's of the workshop stand as long as the account; the shop's
 * name nobody. `door`: ways in and work under way, which belong to one store alone and are not taken along.
 */
export type Belongs = 'pile' | 'person' | 'shop' | 'door'

export interface TableFacts {
  readonly of: Belongs
  /** Columns that name one row, in the order in which rows are read; none is ever null. */
  readonly key: readonly [string, ...string[]]
}

/** Every table, those that are referred to before those that refer: the order in which rows can be written. */
export const tables = {
  flow_version: { of: 'shop', key: ['hash'] },
  counter: { of: 'shop', key: ['name'] },
  account: { of: 'person', key: ['id'] },
  session: { of: 'door', key: ['token_hash'] },
  once_link: { of: 'door', key: ['token_hash'] },
  flow_draft: { of: 'shop', key: ['id'] },
  pile: { of: 'pile', key: ['id'] },
  mail: { of: 'pile', key: ['id'] },
  pile_link: { of: 'pile', key: ['key_hash'] },
  act: { of: 'pile', key: ['pile_id', 'seq'] },
  standing: { of: 'pile', key: ['pile_id'] },
  waiting: { of: 'pile', key: ['pile_id'] },
  garment: { of: 'pile', key: ['pile_id', 'item'] },
  agreed: { of: 'pile', key: ['pile_id', 'version'] },
  note: { of: 'pile', key: ['id'] },
  // By their names: the same picture sent twice stands side by side.
  photo: { of: 'pile', key: ['hash', 'id'] },
  decision: { of: 'pile', key: ['id'] },
  flag_decision: { of: 'pile', key: ['id'] },
  plan_mark: { of: 'pile', key: ['id'] },
  sheet_mark: { of: 'pile', key: ['id'] },
  offer: { of: 'pile', key: ['pile_id', 'version'] },
  // In their order: a counter-entry refers to one before it.
  payment: { of: 'pile', key: ['receipt'] },
  milestone: { of: 'pile', key: ['id'] },
  leaving: { of: 'pile', key: ['id'] },
  reminder_stop: { of: 'pile', key: ['pile_id'] },
  message: { of: 'pile', key: ['id'] },
  fact_set: { of: 'pile', key: ['id'] },
  laid_out: { of: 'pile', key: ['pile_id'] },
  bench_record: { of: 'pile', key: ['pile_id', 'seq'] },
  custody_move: { of: 'pile', key: ['pile_id', 'seq'] },
  custody: { of: 'pile', key: ['pile_id', 'subject'] },
  parcel: { of: 'pile', key: ['pile_id', 'subject'] },
  box_check: { of: 'pile', key: ['id'] },
  sign_off: { of: 'pile', key: ['id'] },
  day_count: { of: 'shop', key: ['id'] },
  erasure: { of: 'shop', key: ['what_hash'] },
  photo_removal: { of: 'door', key: ['hash'] },
  unfinished: { of: 'door', key: ['work'] },
  use_count: { of: 'door', key: ['what', 'until_at'] },
  day_count_line: { of: 'pile', key: ['count_id', 'pile_id', 'subject'] },
} as const satisfies Readonly<Record<keyof Database, TableFacts>>

export type TableName = keyof typeof tables

export const tableNames = Object.keys(tables) as TableName[]

/** What a backup holds and a move takes along. */
export const lastingTables: readonly TableName[] = tableNames.filter(
  (name) => tables[name].of !== 'door',
)
