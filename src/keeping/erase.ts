import type { PhotoStore } from '../photo/keep.ts'
import { isPhotoName } from '../photo/keep.ts'
import type { Store } from '../store/open.ts'
import type { Db } from '../store/schema.ts'
import { type Erasure, erasureOf, noteErasures } from './erasures.ts'

/** What is left of a photo's row once it was erased: that there was one. */
const husk = { hash: '', cloth: null, label: null, look: null } as const

/** Photos' names, to be removed from where they are kept; written in the transaction that lets go of them. */
export async function letGo(db: Db, hashes: readonly string[], at: number): Promise<void> {
  for (const hash of new Set(hashes.filter(isPhotoName))) {
    await db
      .insertInto('photo_removal')
      .values({ hash, since: at })
      .onConflict((conflict) => conflict.column('hash').doNothing())
      .execute()
  }
}

/** A pile with all that belongs to it, in the transaction given. Its photos' files go with the next `sweepPhotos`. */
export async function erasePile(
  db: Db,
  pileId: string,
  by: Erasure['by_whom'],
  at: number,
): Promise<void> {
  const photos = await db.selectFrom('photo').select('hash').where('pile_id', '=', pileId).execute()
  await noteErasures(db, [erasureOf('pile', pileId, by, at)])
  await letGo(
    db,
    photos.map(({ hash }) => hash),
    at,
  )
  await db.deleteFrom('pile').where('id', '=', pileId).execute()
}

/**
 * Photos in all their sizes, with what was read on them, in the transaction given. Their rows stay, empty, where
 * answers and entries name them. Their files go with the next `sweepPhotos`.
 */
export async function erasePhotos(
  db: Db,
  ids: readonly string[],
  by: Erasure['by_whom'],
  at: number,
): Promise<void> {
  for (const id of ids) {
    const row = await db
      .selectFrom('photo')
      .select(['hash', 'removed_at'])
      .where('id', '=', id)
      .executeTakeFirst()
    if (!row) continue
    await noteErasures(db, [erasureOf('photo', id, by, at)])
    await letGo(db, [row.hash], at)
    await db
      .updateTable('photo')
      .set({ ...husk, removed_at: row.removed_at ?? at })
      .where('id', '=', id)
      .execute()
    await db.deleteFrom('sheet_mark').where('photo_id', '=', id).execute()
  }
}

/** Removes the files of photos that were let go, unless another row holds the same picture. Gives how many photos. */
export async function sweepPhotos(store: Store, photos: PhotoStore): Promise<number> {
  const waiting = await store.db.selectFrom('photo_removal').select('hash').execute()
  let removed = 0
  for (const { hash } of waiting) {
    if (!(await isHeld(store.db, hash))) {
      await photos.remove(hash)
      removed += 1
    }
    await store.db.deleteFrom('photo_removal').where('hash', '=', hash).execute()
  }
  return removed
}

async function isHeld(db: Db, hash: string): Promise<boolean> {
  const held = await db
    .selectFrom('photo')
    .select('id')
    .where('hash', '=', hash)
    .where('removed_at', 'is', null)
    .executeTakeFirst()
  return held !== undefined
}
