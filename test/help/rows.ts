import type { Store } from '../../src/store/open.ts'
import { nextNumber } from '../../src/store/rows.ts'
import type { Db, NewRow } from '../../src/store/schema.ts'

/** A pile to hang rows on, with the flow it stands on. */
export async function addPile(db: Db, given: Partial<NewRow<'pile'>> = {}): Promise<string> {
  await db
    .insertInto('flow_version')
    .values({ hash: 'flow-1', body: '{}', first_used_at: 1 })
    .onConflict((c) => c.column('hash').doNothing())
    .execute()
  const pile = {
    id: 'pile-1',
    number: 1,
    language: 'en',
    flow_hash: 'flow-1',
    status: 'open' as const,
    seq: 0,
    started_at: 1,
    changed_at: 1,
    confirmed_at: null,
    ...given,
  }
  await db.insertInto('pile').values(pile).execute()
  return pile.id
}

/** So many running numbers, each taken in a transaction of its own. */
export async function takeNumbers(store: Store, count: number): Promise<number[]> {
  const numbers: number[] = []
  for (let n = 0; n < count; n += 1) {
    numbers.push(await store.transaction((trx) => nextNumber(trx, 'pile')))
  }
  return numbers
}
