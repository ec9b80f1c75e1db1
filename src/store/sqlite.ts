import { DatabaseSync } from '@photostructure/sqlite'
import {
  CompiledQuery,
  type DatabaseConnection,
  type Dialect,
  SqliteAdapter,
  type SqliteDatabase,
  SqliteDialect,
  SqliteDriver,
  type SqliteStatement,
  type TransactionSettings,
} from 'kysely'
import { refuseInside } from './inside.ts'
import { whatWasSent } from './last.ts'
import { asFailure } from './trouble.ts'

/** The process stands still while SQLite waits for another one's write, so the wait is short. */
const busyMilliseconds = 1000

/** Statements that are ready to run again: reading one costs more than most of them take. */
const mostPrepared = 300

const settings = [
  'pragma journal_mode = wal',
  'pragma synchronous = full',
  'pragma foreign_keys = on',
  // 32 MB of pages at most; usual are 2, and answers touch pages all over the file.
  'pragma cache_size = -32000',
  // 16 MB of log are taken into the file at once: a page that many answers write goes there once.
  'pragma wal_autocheckpoint = 4000',
]

function guarded<T>(work: () => T): T {
  try {
    return work()
  } catch (error) {
    throw asFailure(error)
  }
}

/** The file's database in the shape Kysely's dialect expects. */
function openFile(file: string): SqliteDatabase {
  const db = guarded(() => {
    const opened = new DatabaseSync(file, { timeout: busyMilliseconds })
    for (const setting of settings) opened.exec(setting)
    return opened
  })
  const prepare = (sql: string): SqliteStatement => {
    const statement = guarded(() => db.prepare(sql))
    return {
      reader: statement.columns().length > 0,
      all: (parameters) => guarded(() => statement.all(...parameters)),
      run: (parameters) => guarded(() => statement.run(...parameters)),
      iterate: (parameters) => guarded(() => statement.iterate(...parameters)),
    }
  }
  const prepared = new Map<string, SqliteStatement>()
  return {
    close: () => {
      prepared.clear()
      db.close()
    },
    prepare: (sql) => {
      const known = prepared.get(sql)
      if (known) return known
      if (prepared.size >= mostPrepared) prepared.delete(prepared.keys().next().value!)
      const statement = prepare(sql)
      prepared.set(sql, statement)
      return statement
    },
  }
}

/**
 * A full disk, and some other troubles, make SQLite undo the transaction by itself (sqlite.org/lang_transaction.html,
 * "Response To Errors Within A Transaction"); what went wrong is the trouble and not this.
 */
const isUndone = (error: unknown): boolean =>
  error instanceof Error && /^cannot rollback - no transaction is active/.test(error.message)

class FileDriver extends SqliteDriver {
  override async acquireConnection(): Promise<DatabaseConnection> {
    refuseInside()
    return super.acquireConnection()
  }

  /**
   * Takes the write lock at once: a read that later turns into a write could only fail. What only reads
   * sees the file as it stands at its first look, and keeps nobody from writing.
   */
  override async beginTransaction(
    connection: DatabaseConnection,
    { accessMode }: TransactionSettings = {},
  ): Promise<void> {
    const begin = accessMode === 'read only' ? 'begin' : 'begin immediate'
    await connection.executeQuery(CompiledQuery.raw(begin))
  }

  override async commitTransaction(connection: DatabaseConnection): Promise<void> {
    await whatWasSent(connection)
    await super.commitTransaction(connection)
  }

  override async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
    await whatWasSent(connection).catch(() => {})
    try {
      await super.rollbackTransaction(connection)
    } catch (error) {
      if (!isUndone(error)) throw error
    }
  }
}

/** Lets a migration run in one transaction: SQLite undoes changed tables as well as changed rows. */
class FileAdapter extends SqliteAdapter {
  override get supportsTransactionalDdl(): boolean {
    return true
  }
}

export function sqliteDialect(file: string): Dialect {
  const database = openFile(file)
  const dialect = new SqliteDialect({ database })
  dialect.createDriver = () => new FileDriver({ database })
  dialect.createAdapter = () => new FileAdapter()
  return dialect
}
