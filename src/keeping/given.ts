import { sql } from 'kysely'
import type { Db } from '../store/schema.ts'
import { type TableFacts, type TableName, tables } from '../store/tables.ts'

/** Tables of a pile that its customer is not given, and why. */
const notGiven: Partial<Record<TableName, 'ways in' | 'counted anew from the rest'>> = {
  pile_link: 'ways in',
  standing: 'counted anew from the rest',
  waiting: 'counted anew from the rest',
}

/** Columns that say nothing of a customer: how the same thing sent twice is known, and who had a mail in hand. */
const workings = ['pile_id', 'idem', 'once', 'lease', 'tried_since', 'due_at', 'last_seq']

/** What staff wrote for the workshop's eyes, and were told so; a customer may ask for it. */
const staffWords: Partial<Record<TableName, readonly string[]>> = {
  decision: ['reason'],
  flag_decision: ['reason'],
  fact_set: ['reason'],
  offer: ['over_reason'],
  bench_record: ['note'],
  custody_move: ['note'],
  box_check: ['note'],
  sign_off: ['note'],
}

/** Members of staff are called by what they are, not by their accounts. */
const people = ['who', 'undone_by', 'settled_by', 'sent_by', 'account_id']

/** Columns that hold JSON as text. */
const holdJson: Partial<Record<TableName, readonly string[]>> = {
  mail: ['body'],
  act: ['act'],
  garment: ['flags', 'facts'],
  agreed: ['body', 'figures'],
  photo: ['cloth', 'label', 'look'],
  plan_mark: ['body'],
  sheet_mark: ['corners', 'sizes'],
  offer: ['sums'],
  bench_record: ['body'],
  box_check: ['photos'],
}

type Row = Readonly<Record<string, unknown>>

/** What is kept of a pile, for its customer: rows by table, times as milliseconds UTC. */
export interface Given {
  readonly format: 'pieceworth pile'
  readonly version: 1
  /** ISO 8601. */
  readonly made: string
  readonly tables: Readonly<Partial<Record<TableName, readonly Row[]>>>
}

const isStaff = (said: unknown): boolean => typeof said === 'string' && said !== 'customer'

function givenRow(table: TableName, row: Row): Row {
  const left = [...workings, ...(staffWords[table] ?? [])]
  const json = holdJson[table] ?? []
  return Object.fromEntries(
    Object.entries(row)
      .filter(([column]) => !left.includes(column))
      .map(([column, value]) => {
        if (people.includes(column)) return [column, isStaff(value) ? 'staff' : value]
        return [
          column,
          json.includes(column) && typeof value === 'string' ? JSON.parse(value) : value,
        ]
      }),
  )
}

/** All that is kept of a pile but the ways to it and what staff wrote for themselves. */
export async function givenOf(db: Db, pileId: string, at: number): Promise<Given> {
  const given: Partial<Record<TableName, readonly Row[]>> = {}
  const ofPile = (Object.entries(tables) as [TableName, TableFacts][]).filter(
    ([table, { of }]) => of === 'pile' && !notGiven[table],
  )
  for (const [table, { key }] of ofPile) {
    const { rows } = await sql<Row>`
      select * from ${sql.table(table)}
      where ${sql.ref(table === 'pile' ? 'id' : 'pile_id')} = ${pileId}
      order by ${sql.join(key.map((column) => sql.ref(column)))}
    `.execute(db)
    if (rows.length > 0) given[table] = rows.map((row) => givenRow(table, row))
  }
  return { format: 'pieceworth pile', version: 1, made: new Date(at).toISOString(), tables: given }
}
