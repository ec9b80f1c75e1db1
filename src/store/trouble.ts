import pg from 'pg'
import { Failure } from '../base/failures.ts'

/** SQLite's primary result codes (sqlite.org/rescode.html); the low byte of an extended code. */
const sqliteConflicts = [5, 6] // busy, locked
const sqliteUnreachable = [8, 10, 11, 13, 14, 26] // read-only, i/o, corrupt, full, cannot open, no database
const sqliteTaken = [1555, 2067, 2579] // primary key, unique, rowid

/** SQLSTATE codes and classes (PostgreSQL manual, appendix A). */
const postgresConflicts = ['40001', '40P01'] // serialization failure, deadlock
const postgresUnreachable = /^(08|28|3D|53|57P)/
const postgresTaken = '23505'

/** What pg says when it lost its connection; these errors carry no code. */
const lostConnection = /^(Connection terminated|Client has encountered a connection|Query read)/

/**
 * What SQLite says of them (sqlite3_errstr of sqlite.org/c3ref/errcode.html; of a row that is there, its own words). The
 * driver leaves the code out where a statement gives rows, in the last version that runs on Node 20.
 */
const sqliteWords: readonly (readonly [begins: string, code: number])[] = [
  ['database is locked', 5],
  ['database table is locked', 6],
  ['attempt to write a readonly database', 8],
  ['disk I/O error', 10],
  ['database disk image is malformed', 11],
  ['database or disk is full', 13],
  ['unable to open database file', 14],
  ['file is not a database', 26],
  ['UNIQUE constraint failed', 2067],
]

function sqliteCode(error: unknown): number | undefined {
  if (!(error instanceof Error)) return undefined
  const { code, errcode } = error as { code?: unknown; errcode?: unknown }
  if (errcode !== undefined) return Number(errcode)
  if (code !== 'ERR_SQLITE_ERROR') return undefined
  return sqliteWords.find(([begins]) => error.message.startsWith(begins))?.[1]
}

/** The SQLSTATE of an error of PostgreSQL, whichever driver handed it on. */
const sqlState = (error: unknown): string | undefined =>
  error instanceof Error && 'severity' in error && 'code' in error ? String(error.code) : undefined

function conflict(error: unknown): boolean {
  const code = sqliteCode(error)
  if (code !== undefined) return sqliteConflicts.includes(code & 0xff)
  return postgresConflicts.includes(sqlState(error) ?? '')
}

function unreachable(error: unknown): boolean {
  const code = sqliteCode(error)
  if (code !== undefined) return sqliteUnreachable.includes(code & 0xff)
  const state = sqlState(error)
  if (state !== undefined) return postgresUnreachable.test(state)
  if (!(error instanceof Error) || error instanceof pg.DatabaseError) return false
  return 'syscall' in error || lostConnection.test(error.message)
}

/** A driver's error as a failure of the catalogue where it is one, else the error itself. */
export function asFailure(error: unknown): unknown {
  if (unreachable(error)) return new Failure('store_unavailable', {}, { cause: error })
  if (conflict(error)) return new Failure('busy', {}, { cause: error })
  return error
}

/** Two writers met, and the store undid one of them: the same work may be tried again. */
export const isConflict = (error: unknown): boolean =>
  error instanceof Failure && conflict(error.cause)

/** A row with this primary key or unique value is there already. */
export function isTaken(error: unknown): boolean {
  const code = sqliteCode(error)
  return code !== undefined ? sqliteTaken.includes(code) : sqlState(error) === postgresTaken
}

/** What PostgreSQL says against whoever knocks (SQLSTATE), in the operator's words. */
const refusals: readonly (readonly [state: RegExp, message: string])[] = [
  [/^28/, 'refuses this account or its password'],
  [/^3D/, 'has no database of this name'],
  [/^53/, 'has no connection or no room to spare'],
  [/^57P/, 'is starting or stopping'],
]

/** The code at the bottom of an error: of a system call, of SQLite, of PostgreSQL. */
export function troubleCode(error: unknown): string {
  const bottom = error instanceof Failure ? error.cause : error
  if (!(bottom instanceof Error)) return ''
  const { code } = bottom as { code?: unknown }
  const ofSqlite = sqliteCode(bottom)
  return ofSqlite === undefined ? String(code ?? bottom.message) : `SQLite ${ofSqlite}`
}

/**
 * The records cannot be had when a command starts: whoever runs it is told the setting, where was looked, and what
 * stands against it.
 */
export function atFault(dialect: 'sqlite' | 'postgres', where: string, cause: unknown): Failure {
  const code = troubleCode(cause)
  const [, refused] =
    refusals.find(([state]) => /^[0-9A-Z]{5}$/.test(code) && state.test(code)) ?? []
  const [setting, trouble] =
    dialect === 'postgres'
      ? ['DATABASE_URL', refused ? `the server ${refused}` : 'no database answers there']
      : ['DATA_DIR', 'the records cannot be opened or written']
  const message = `${where}: ${trouble}${code && ` (${code})`}`
  return new Failure('setting_invalid', { setting, message }, { cause })
}
