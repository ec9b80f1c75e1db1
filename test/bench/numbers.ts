import { z } from 'zod'
import { days } from '../../src/base/clock.ts'
import { newId } from '../../src/base/ids.ts'
import { exportNames } from '../../src/desk/export.ts'
import type { Store } from '../../src/store/open.ts'
import { addStaff } from '../help/desk.ts'
import { signedIn } from '../help/signed-in.ts'
import { confirmPile, openWorkshop, said } from '../help/workshop.ts'
import { inTurns, onBothStores } from './stores.ts'

const given = z.tuple([
  z.coerce.number().int().positive().default(5000),
  z.coerce.number().int().positive().default(20),
])
const now = Date.UTC(2026, 10, 1, 9)
const clock = () => now

/**
 * How long the owner's numbers and each export take at the server with so many piles of six garments, four of them
 * decided of, beside a bare select of all their garments, in turns on the same store: SQLite, then PostgreSQL.
 */
export async function benchNumbers(told: readonly string[]): Promise<void> {
  const [piles, rounds] = given.parse([told[0], told[1]])
  await onBothStores((name, store) => measure(name, store, piles, rounds))
}

/** Kinds of garments of a pile, as its customer tells them. */
const shirts = ['button-shirt', 'button-shirt', 'tshirt', 'sweatshirt', 'jeans', 'jumper']

/** So many copies of one confirmed pile, with its acts and garments, four of which are decided of. */
async function copied(store: Store, piles: number): Promise<void> {
  const { db } = store
  const pile = await db.selectFrom('pile').selectAll().executeTakeFirstOrThrow()
  const acts = await db.selectFrom('act').selectAll().execute()
  const standing = await db.selectFrom('standing').selectAll().executeTakeFirstOrThrow()
  const garments = await db.selectFrom('garment').selectAll().execute()
  const who = await addStaff(db)
  await store.transaction(async (trx) => {
    for (let number = 1; number <= piles; number += 1) {
      const id = number === 1 ? pile.id : newId()
      const of = { pile_id: id }
      if (number > 1) {
        const at = now - days(1 + ((number * 7919) % 60))
        const row = { ...pile, id, number, started_at: at, confirmed_at: at, changed_at: at }
        await trx.insertInto('pile').values(row).execute()
        await trx
          .insertInto('act')
          .values(acts.map((act) => ({ ...act, ...of })))
          .execute()
        await trx
          .insertInto('standing')
          .values({ ...standing, ...of })
          .execute()
        await trx
          .insertInto('garment')
          .values(garments.map((one) => ({ ...one, ...of })))
          .execute()
      }
      const verdicts = ['take', 'care', 'ask', 'decline'].map((verdict, i) => ({
        id: newId(),
        ...of,
        item: i + 1,
        verdict,
        reason: 'because it is so',
        who,
        at: now - days(1) + i,
      }))
      await trx.insertInto('decision').values(verdicts).execute()
    }
  })
}

async function measure(name: string, store: Store, piles: number, rounds: number): Promise<void> {
  const workshop = await openWorkshop(store, clock)
  try {
    await confirmPile(
      workshop.conversation,
      shirts.map((kind) => ({ kind: said(kind), size: said('L') })),
    )
    await copied(store, piles)
    const owner = await signedIn(store, clock, workshop.app, { name: 'Odile', role: 'owner' })
    const over = async (path: string) => {
      const { status } = await owner.get(path)
      if (status !== 200) throw new Error(`${path} answers ${status}`)
    }
    await inTurns(
      `${name}, ${piles} piles`,
      {
        'a bare select of the garments': () =>
          store.db.selectFrom('garment').selectAll().orderBy('pile_id').execute(),
        'the numbers': () => over('/desk/numbers?from=2026-08-01&to=2026-11-01'),
        ...Object.fromEntries(
          exportNames.map((one) => [
            `the export of ${one}`,
            () => over(`/desk/numbers/export/${one}.csv`),
          ]),
        ),
      },
      rounds,
    )
  } finally {
    await workshop.close()
  }
}
