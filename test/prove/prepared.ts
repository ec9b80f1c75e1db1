import sharp from 'sharp'
import { systemClock } from '../../src/base/clock.ts'
import { openStore, type StoreSettings } from '../../src/store/open.ts'
import { addGarment, answerAll, pileAnswers, shirt } from '../help/chat.ts'
import { acceptedPile, atTheDoor, step } from '../help/custody.ts'
import { queuePile } from '../help/desk.ts'
import { Walker } from '../help/walker.ts'
import { clerkCookie, playPile } from './load.ts'

/** The pile whose garment is moved, and the first of those that are decided, by their numbers. */
export const custodyPile = 5000
export const firstToDecide = 6000

/** The nth photo, like no other. */
export const photoOf = (n: number): Promise<Buffer> =>
  sharp({
    create: {
      width: 400,
      height: 300,
      channels: 3,
      background: { r: (n * 37) % 256, g: (n * 11) % 256, b: n % 256 },
    },
  })
    .jpeg()
    .toBuffer()

/** Two customers who have begun, a pile in the house, so many to be decided, and the owner signed in. */
export async function prepared(url: string, settings: StoreSettings, piles: number) {
  const customer = async () => answerAll(await new Walker(url).start(), pileAnswers, 'not_to_cut')
  const teller = await customer()
  const photographer = await answerAll(await customer(), pileAnswers)
  await addGarment(photographer, shirt, 'photos')
  const store = await openStore(settings)
  try {
    const { pileId, who } = await acceptedPile(store, { number: custodyPile })
    await atTheDoor(store, pileId, who)
    await step(store, pileId, { subject: '1', move: 'receive', via: 'P1', who })
    for (let n = 0; n < piles; n += 1) await queuePile(store.db, { number: firstToDecide + n })
    // Servers that start read the flows of all piles, and erase what nobody has touched for long.
    const { flow_hash } = await store.db
      .selectFrom('pile')
      .select('flow_hash')
      .where('number', '<', custodyPile)
      .executeTakeFirstOrThrow()
    const now = { changed_at: systemClock(), confirmed_at: systemClock() }
    await store.db
      .updateTable('pile')
      .set({ flow_hash, ...now })
      .where('number', '>=', custodyPile)
      .execute()
    await store.db.deleteFrom('flow_version').where('hash', '!=', flow_hash).execute()
  } finally {
    await store.close()
  }
  return {
    teller: teller.pilePath,
    photographer: photographer.pilePath,
    cookie: await clerkCookie(settings, 'owner'),
  }
}

/** Plays a pile of one garment to its end, whose customer can be written to by mail. Its number. */
export async function playedPile(url: string, settings: StoreSettings): Promise<number> {
  await playPile(url, 1, () => {})
  const store = await openStore(settings)
  try {
    const { number } = await store.db
      .selectFrom('pile')
      .select('number')
      .where('status', '=', 'confirmed')
      .where('number', '<', custodyPile)
      .executeTakeFirstOrThrow()
    return number
  } finally {
    await store.close()
  }
}
