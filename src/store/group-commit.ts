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

/**
 * Does what of it needs no transaction, durably, in one statement or none; null: it has to be asked in one. Where it
 * throws, nothing is done.
 */
export type Early<Ask, Answer> = (asks: readonly Ask[]) => Promise<readonly (Answer | null)[]>

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
 * a whole transaction fails, each of its batch is tried in one of its own. `early` comes before the transaction.
 */
export function groupCommit<Ask, Answer>(
  store: Pick<Store, 'transaction' | 'dialect'>,
  work: Batch<Ask, Answer>,
  { early, most = usualMost }: { early?: Early<Ask, Answer>; most?: number } = {},
): (ask: Ask) => Promise<Answer> {
  const waiting: Waiting<Ask, Answer>[] = []
  let running = false
  /** How many came together the last time. */
  let last = 0

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

  /** Those that are left. */
  async function commitEarly(
    batch: readonly Waiting<Ask, Answer>[],
  ): Promise<readonly Waiting<Ask, Answer>[]> {
    if (!early) return batch
    try {
      const done = await early(batch.map(({ ask }) => ask))
      for (const [nth, answer] of done.entries()) if (answer !== null) batch[nth]!.resolve(answer)
      return batch.filter((_, nth) => done[nth] === null)
    } catch (error) {
      // What is the matter with one of them, the transaction says.
      if (!isOfStore(error)) return batch
      for (const { reject } of batch) reject(error)
      return []
    }
  }

  async function commitAll(): Promise<void> {
    while (waiting.length > 0) {
      const batch = waiting.splice(0, most)
      last = batch.length
      const left = await commitEarly(batch)
      if (left.length > 0) await commit(left)
    }
    running = false
  }

  return (ask) =>
    new Promise((resolve, reject) => {
      waiting.push({ ask, resolve, reject })
      if (running) return
      running = true
      // One who asks alone need not wait: a server writes while others are read. A file holds the process up.
      if (last === 1 && store.dialect === 'postgres') void commitAll()
      // By then all requests that have come are read: the first of them does not go alone.
      else setImmediate(commitAll)
    })
}
