import { AsyncLocalStorage } from 'node:async_hooks'

const transactions = new AsyncLocalStorage<{ open: boolean }>()

/** Runs the body of a transaction so that `refuseInside` can tell it. */
export async function insideTransaction<T>(body: () => Promise<T>): Promise<T> {
  const mark = { open: true }
  try {
    return await transactions.run(mark, body)
  } finally {
    mark.open = false
  }
}

/**
 * A body that asks the store for another connection would wait for itself for ever where there is
 * one connection, and see none of its own writes where there are more.
 */
export function refuseInside(): void {
  if (transactions.getStore()?.open) {
    throw new Error('inside a transaction use its own handle, not the store')
  }
}
