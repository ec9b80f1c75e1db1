import { Failure } from '../base/failures.ts'
import type { Store } from './open.ts'
import type { Db } from './schema.ts'

/** What one of a batch came to. */
export type Settled<T> = { readonly value: T } | { readonly error: unknown }

/** Does what was asked for in one transaction, each with what it came to, in order. */
export type Batch<Ask, Answer> = (
  trx: Db,
  asks: readonly Ask[],
) => Promise<readonly Settled<Answer>[]>

interface Waiting<Ask, Answer> {
  readonly ask: Ask
  resolve(answer: Answer): void
  reject(error: unknown): void
}

/** As many as one transaction takes: what it holds is not held for long. */
const usualMost = 100

/** A store that is away, or busy after every try, is so for whoever asks. */
const isOfStore = (error: unknown): boolean =>
  error instanceof Failure && (error.code === 'store_unavailable' || error.code === 'busy')

/**
 * Group commit: what is asked for while a transaction runs waits, and the next transaction takes all of it, so that
 * many share one sync of the disk. Each resolves once it is durable. What `work` gives an error for fails alone; where
 * a whole transaction fails, each of its batch is tried in one of its own.
 */
export function groupCommit<Ask, Answer>(
  store: Pick<Store, 'transaction'>,
  work: Batch<Ask, Answer>,
  most = usualMost,
): (ask: Ask) => Promise<Answer> {
  const waiting: Waiting<Ask, Answer>[] = []
  let running = false

  async function commit(batch: readonly Waiting<Ask, Answer>[]): Promise<void> {
    const asks = batch.map(({ ask }) => ask)
    try {
      const settled = await store.transaction((trx) => work(trx, asks))
      for (const [nth, { resolve, reject }] of batch.entries()) {
        const one = settled[nth]!
        if ('error' in one) reject(one.error)
        else resolve(one.value)
      }
    } catch (error) {
      if (batch.length > 1 && !isOfStore(error)) {
        for (const one of batch) await commit([one])
      } else {
        for (const { reject } of batch) reject(error)
      }
    }
  }

  async function commitAll(): Promise<void> {
    while (waiting.length > 0) await commit(waiting.splice(0, most))
    running = false
  }

  return (ask) =>
    new Promise((resolve, reject) => {
      waiting.push({ ask, resolve, reject })
      if (running) return
      running = true
      // By then all requests that have come are read: the first of them does not go alone.
      setImmediate(commitAll)
    })
}
