import type { CompiledQuery, DatabaseConnection } from 'kysely'
import type { Db } from './schema.ts'

const sent = new WeakMap<DatabaseConnection, Promise<unknown>>()

/**
 * Sends the last statements of a transaction, in their order, none waiting for the answer to the one before; its
 * commit goes out right behind them and throws what one of them throws. Nothing may be asked of `trx` afterwards.
 */
export const sendLast = (trx: Db, statements: readonly CompiledQuery[]): Promise<void> =>
  trx.getExecutor().provideConnection(async (connection) => {
    const all = Promise.all(statements.map((one) => connection.executeQuery(one)))
    // Heard here, so that no failure is unheard while the commit is on its way.
    all.catch(() => {})
    sent.set(connection, all)
  })

/** Resolves once what was sent last on this connection is done; asked once. */
export async function whatWasSent(connection: DatabaseConnection): Promise<void> {
  const all = sent.get(connection)
  sent.delete(connection)
  await all
}
