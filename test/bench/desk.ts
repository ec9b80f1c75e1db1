import { z } from 'zod'
import { days } from '../../src/base/clock.ts'
import { fillWaiting } from '../../src/intake/waiting.ts'
import type { Store } from '../../src/store/open.ts'
import { queuePile } from '../help/desk.ts'
import { signedIn } from '../help/signed-in.ts'
import { openWorkshop } from '../help/workshop.ts'
import { inTurns, onBothStores } from './stores.ts'

const given = z.tuple([
  z.coerce.number().int().positive().default(5000),
  z.coerce.number().int().positive().default(60),
])
const now = Date.UTC(2026, 10, 1, 9)
const clock = () => now

/**
 * How long the desk's first page takes at the server with so many piles, all of them waiting, beside a bare select
 * of as many rows by an index, in turns on the same store: SQLite, then PostgreSQL.
 */
export async function benchDesk(told: readonly string[]): Promise<void> {
  const [piles, rounds] = given.parse([told[0], told[1]])
  await onBothStores((name, store) => measure(name, store, piles, rounds))
}

async function measure(name: string, store: Store, piles: number, rounds: number): Promise<void> {
  await store.transaction(async (trx) => {
    for (let number = 1; number <= piles; number += 1) {
      await queuePile(trx, {
        number,
        confirmedAt: now - days(1 + ((number * 7919) % 60)),
        needBy: number % 3 ? now + days((number * 104_729) % 200) : null,
        grades: ['sound', 'care', number % 2 ? 'eyes' : 'sound', 'sound', 'sound', 'home'],
        who: `Ana ${number}`,
      })
    }
  })
  await fillWaiting(store.db)
  const workshop = await openWorkshop(store, clock)
  try {
    const visitor = await signedIn(store, clock, workshop.app, { name: 'Marta' })
    const bare = () =>
      store.db
        .selectFrom('waiting')
        .selectAll()
        .where('on_whom', '=', 'us')
        .orderBy('since')
        .limit(50)
        .execute()
    await inTurns(
      `${name}, ${piles} piles`,
      {
        'a bare select by the index': bare,
        'first page': () => visitor.get('/desk'),
        'last page': () => visitor.get(`/desk?page=${Math.ceil(piles / 50)}`),
        'narrowed by a name': () => visitor.get(`/desk?text=Ana ${piles}`),
        'narrowed to what needs eyes': () => visitor.get('/desk?only=eyes'),
      },
      rounds,
    )
  } finally {
    await workshop.close()
  }
}
