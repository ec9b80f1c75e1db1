import { Failure } from '../base/failures.ts'
import type { PhotoStore } from '../photo/keep.ts'
import type { Store } from '../store/open.ts'
import { lockPile } from '../store/rows.ts'
import type { Db } from '../store/schema.ts'
import { erasePhotos, sweepPhotos } from './erase.ts'
import type { Erasure } from './erasures.ts'

/** What a photo answers that the workshop took; any other came from the customer or with a message. */
export const workshopQuestions = ['bench', 'custody', 'record', 'laid-out'] as const

export interface KeptPhoto {
  readonly id: string
  /** The garment's number; null or 0: of none. */
  readonly item: number | null
  /** Its customer sent it. */
  readonly sent: boolean
}

/** Photos of a pile that are still there, in the order in which they came. */
export async function keptPhotos(db: Db, pileId: string): Promise<KeptPhoto[]> {
  const rows = await db
    .selectFrom('photo')
    .leftJoin('message', (join) =>
      join
        .onRef('message.pile_id', '=', 'photo.pile_id')
        .on((eb) => eb('photo.question', '=', eb(eb.val('message '), '||', eb.ref('message.id')))),
    )
    .select(['photo.id', 'photo.item', 'photo.question', 'message.account_id'])
    .where('photo.pile_id', '=', pileId)
    .where('photo.removed_at', 'is', null)
    .orderBy('photo.at')
    .orderBy('photo.id')
    .execute()
  const ofWorkshop = (question: string | null): boolean =>
    workshopQuestions.some((one) => one === question)
  return rows.map(({ id, item, question, account_id }) => ({
    id,
    item,
    sent: account_id === null && !ofWorkshop(question),
  }))
}

/**
 * Erases one photo of a pile in all its sizes, with what was read on it; one that is erased already is left so.
 * A customer erases what they sent. Throws `link_unknown` or `not_found`. False: its files could not be reached, and
 * go with the next purge.
 */
export async function eraseOnePhoto(
  { store, photos }: { store: Store; photos: PhotoStore },
  pileId: string,
  { id, by, at }: { id: string; by: Erasure['by_whom']; at: number },
): Promise<boolean> {
  await store.transaction(async (db) => {
    if (!(await lockPile(db, pileId))) throw new Failure('link_unknown')
    const there = await db
      .selectFrom('photo')
      .select('hash')
      .where('pile_id', '=', pileId)
      .where('id', '=', id)
      .executeTakeFirst()
    if (!there) throw new Failure('not_found')
    if (there.hash === '') return
    const mine = (await keptPhotos(db, pileId)).find((one) => one.id === id)
    if (by === 'customer' && !mine?.sent) throw new Failure('not_found')
    await erasePhotos(db, [id], by, at)
  })
  try {
    await sweepPhotos(store, photos)
    return true
  } catch {
    return false
  }
}
