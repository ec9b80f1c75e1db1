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

const sqliteCode = (error: unknown): number | undefined =>
  error instanceof Error && 'errcode' in error ? Number(error.errcode) : undefined

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
