import { CompiledQuery, PostgresAdapter } from 'kysely'
import type { Store } from './open.ts'
import type { Database, Db, Row } from './schema.ts'

type ColumnType = 'text' | 'bigint'

/** Columns of rows that a statement is given. */
export type Columns = Readonly<Record<string, ColumnType>>

export type Given<C extends Columns> = {
  readonly [Name in keyof C]: (C[Name] extends 'text' ? string : number) | null
}

/** Texts that do not change, by the names under which PostgreSQL keeps them ready on a connection. */
export const namesOfFixed = new Map<string, string>()

function fixed(text: string): string {
  namesOfFixed.set(text, `pieceworth_${namesOfFixed.size}`)
  return text
}

const fromFile = (as: string, columns: Columns, nth: number): string => {
  const fields = Object.keys(columns).map((name) => `value ->> '$.${name}' as ${name}`)
  return `(select ${fields.join(', ')} from json_each(?${nth})) as ${as}`
}

/** One row, each of its values a parameter of its own: taking it out of JSON takes longer than writing it. */
const oneFromFile = (as: string, columns: Columns): string => {
  const fields = Object.keys(columns).map((name, nth) => `?${nth + 1} as ${name}`)
  return `(select ${fields.join(', ')}) as ${as}`
}

const oneFromServer = (as: string, columns: Columns): string => {
  const fields = Object.entries(columns).map(
    ([name, type], nth) => `$${nth + 1}::${type} as ${name}`,
  )
  return `(select ${fields.join(', ')}) as ${as}`
}

const fromServer = (as: string, columns: Columns, nth: number): string => {
  const typed = Object.entries(columns).map(([name, type]) => `${name} ${type}`)
  return `json_to_recordset($${nth}::json) as ${as}(${typed.join(', ')})`
}

/** Whether this store knows `for update` and statements that write within others. */
export const isServer = (db: Db): boolean => db.getExecutor().adapter instanceof PostgresAdapter

/**
 * The row of a table whose `column` is what `is` says, for each row before it. PostgreSQL takes what is given for a
 * hundred rows and would rather read a whole table for them; so it looks up one after the other.
 */
export const lookedUp = (
  table: keyof Database,
  { column, is, held = false }: { column: string; is: string; held?: boolean },
): string =>
  `cross join lateral (select * from ${table} as one where one.${column} = ${is} limit 1${
    held ? ' for update skip locked' : ''
  }) as ${table}`

/**
 * A statement whose text is the same however many rows it is given: each kind of them comes as JSON in one parameter,
 * so that neither we build it nor the store reads it anew each time; one row alone of an only kind comes as it is.
 * `text` makes it of what stands for the rows, a table with these columns by the name of their kind. It returns no
 * `*`: what a store keeps ready stays with the columns that it was read with. Text in rows is whole characters without
 * NUL, as answers are kept.
 */
export function onGiven<Kinds extends Readonly<Record<string, Columns>>>(
  kinds: Kinds,
  text: (given: Readonly<Record<keyof Kinds, string>>, store: Store['dialect']) => string,
): (db: Db, rows: { readonly [K in keyof Kinds]: readonly Given<Kinds[K]>[] }) => CompiledQuery {
  const names: (keyof Kinds & string)[] = Object.keys(kinds)
  const given = (from: typeof fromFile) =>
    Object.fromEntries(names.map((name, n) => [name, from(name, kinds[name]!, n + 1)])) as Record<
      keyof Kinds,
      string
    >
  const onFile = fixed(text(given(fromFile), 'sqlite'))
  const onServer = fixed(text(given(fromServer), 'postgres'))
  const [only, ...others] = names
  const ofOne =
    others.length === 0
      ? {
          columns: Object.keys(kinds[only!]!),
          onFile: text(given(oneFromFile), 'sqlite'),
          onServer: fixed(text(given(oneFromServer), 'postgres')),
        }
      : null
  return (db, rows) => {
    const [row, ...more] = rows[only!]
    if (ofOne && row && more.length === 0) {
      return CompiledQuery.raw(
        isServer(db) ? ofOne.onServer : ofOne.onFile,
        ofOne.columns.map((column) => row[column]),
      )
    }
    return CompiledQuery.raw(
      isServer(db) ? onServer : onFile,
      names.map((name) => JSON.stringify(rows[name])),
    )
  }
}

/** A table whose rows are written: its columns and, where a row that is there takes a new one's values, its key. */
export interface Written<C extends Columns = Columns> {
  readonly table: keyof Database
  readonly columns: C
  readonly key?: readonly string[]
}

/** The same with every column that the table has. */
export interface WrittenInto<Table extends keyof Database>
  extends Written<Readonly<Record<keyof Row<Table> & string, ColumnType>>> {
  readonly table: Table
}

/** Text of an `insert` of what `from` gives, which holds no `where`. */
export function inserting({ table, columns, key }: Written, from: string): string {
  const names = Object.keys(columns)
  const list = names.join(', ')
  const insert = `insert into ${table} (${list}) select ${list} from ${from}`
  if (!key) return insert
  const changed = names.filter((name) => !key.includes(name))
  const set = changed.map((name) => `${name} = excluded.${name}`)
  // SQLite takes `on` after a table for a join, unless a condition stands between.
  return `${insert} where true on conflict (${key.join(', ')}) do update set ${set.join(', ')}`
}

/** Writes rows into a table. */
export function writing<C extends Columns>(
  written: Written<C>,
): (db: Db, rows: readonly Given<C>[]) => CompiledQuery {
  const insert = onGiven({ given: written.columns }, ({ given }) => inserting(written, given))
  return (db, rows) => insert(db, { given: rows })
}
