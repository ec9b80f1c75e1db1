import type { Clock } from '../base/clock.ts'
import { Failure } from '../base/failures.ts'
import { newId } from '../base/ids.ts'
import type { PhotoStore } from '../photo/keep.ts'
import type { Lane } from '../photo/lane.ts'
import type { Db, PhotoRow, PhotoSide } from '../store/schema.ts'

/** Where a photo belongs: the question it answers. */
export interface PhotoPlace {
  readonly pileId: string
  readonly item: number
  readonly question: string
}

/**
 * Makes a file safe, looks at the garment if it shows one, and keeps it as a draft of the question: a garment's
 * picture that is a draft there already is that one. Throws what was wrong with the file.
 */
export async function takePhoto(
  { db, photos, lane, clock }: { db: Db; photos: PhotoStore; lane: Lane; clock: Clock },
  place: PhotoPlace,
  bytes: Uint8Array,
  shows: 'garment' | 'label' | 'other',
): Promise<string> {
  const {
    photo: safe,
    look,
    focal35,
  } = shows === 'garment'
    ? await lane.look(bytes)
    : { photo: await lane.makeSafe(bytes), look: null, focal35: null }
  const hash = await photos.keep(safe)
  const before = shows === 'garment' ? await firstDraft(db, place, hash) : null
  if (before !== null) return before
  const id = newId()
  await db
    .insertInto('photo')
    .values({
      id,
      pile_id: place.pileId,
      item: place.item,
      question: place.question,
      hash,
      width: safe.width,
      height: safe.height,
      bytes: safe.full.byteLength,
      cloth: JSON.stringify(safe.seen),
      label: null,
      look: look && JSON.stringify(look),
      focal35,
      shows: null,
      kept: 0,
      at: clock(),
      removed_at: null,
    })
    .execute()
  return id
}

/** Photos that ever came for a question, those that were taken away too. */
export const receivedFor = (db: Db, place: PhotoPlace) =>
  db
    .selectFrom('photo')
    .where('pile_id', '=', place.pileId)
    .where('item', '=', place.item)
    .where('question', '=', place.question)

export const hasReceived = async (db: Db, place: PhotoPlace): Promise<boolean> =>
  (await receivedFor(db, place).select('id').limit(1).executeTakeFirst()) !== undefined

/** Photos received for a question that no answer holds yet, oldest first. */
export async function draftsOf(db: Db, place: PhotoPlace): Promise<string[]> {
  const rows = await receivedFor(db, place)
    .select('id')
    .where('kept', '=', 0)
    .where('removed_at', 'is', null)
    .orderBy('at')
    .execute()
  return rows.map(({ id }) => id)
}

async function firstDraft(
  db: Db,
  place: PhotoPlace,
  hash: string,
  other = '',
): Promise<string | null> {
  const first = await receivedFor(db, place)
    .select('id')
    .where('id', '!=', other)
    .where('kept', '=', 0)
    .where('removed_at', 'is', null)
    .where('hash', '=', hash)
    .orderBy('at')
    .executeTakeFirst()
  return first?.id ?? null
}

/**
 * The draft of the same picture that was there before `id`, which goes; else `id`. Whoever heard no answer sends a
 * file again, and shows one photo with it; both may have come at one time.
 */
export async function firstOfItsKind(
  db: Db,
  place: PhotoPlace,
  id: string,
  at: number,
): Promise<string> {
  const { hash } = await receivedFor(db, place)
    .select('hash')
    .where('id', '=', id)
    .executeTakeFirstOrThrow()
  const first = await firstDraft(db, place, hash, id)
  if (first === null) return id
  await dropPhotos(db, place.pileId, [id], at)
  return first
}

/** Photos that were taken away, or that a form sent twice brought again, are gone from the pile. */
export async function dropPhotos(
  db: Db,
  pileId: string,
  ids: readonly string[],
  at: number,
): Promise<void> {
  if (ids.length === 0) return
  await db
    .updateTable('photo')
    .set({ removed_at: at })
    .where('pile_id', '=', pileId)
    .where('id', 'in', ids)
    .execute()
}

/** Drafts that an answer now holds are no drafts any more. */
export async function keepPhotos(db: Db, pileId: string, ids: readonly string[]): Promise<void> {
  if (ids.length === 0) return
  await db
    .updateTable('photo')
    .set({ kept: 1 })
    .where('pile_id', '=', pileId)
    .where('id', 'in', ids)
    .execute()
}

/** What photos show of their garment, by id; null: nobody told. */
export type Sides = ReadonlyMap<string, PhotoSide | null>

/** Of photos of a pile that are still there. */
export async function sidesOf(db: Db, pileId: string, ids: readonly string[]): Promise<Sides> {
  if (ids.length === 0) return new Map()
  const rows = await db
    .selectFrom('photo')
    .select(['id', 'shows'])
    .where('pile_id', '=', pileId)
    .where('id', 'in', ids)
    .where('removed_at', 'is', null)
    .execute()
  return new Map(rows.map(({ id, shows }) => [id, shows]))
}

/** Keeps what was told of photos of a pile. */
export async function tellSides(db: Db, pileId: string, sides: Sides): Promise<void> {
  for (const [id, shows] of sides) {
    await db
      .updateTable('photo')
      .set({ shows })
      .where('pile_id', '=', pileId)
      .where('id', '=', id)
      .execute()
  }
}

/** A photo that a pile has or had. Throws `not_found` for another pile's. */
export async function everPhotoOf(db: Db, pileId: string, id: string): Promise<PhotoRow> {
  const row = await db
    .selectFrom('photo')
    .selectAll()
    .where('pile_id', '=', pileId)
    .where('id', '=', id)
    .executeTakeFirst()
  if (!row) throw new Failure('not_found')
  return row
}

/** One photo of a pile. Throws `not_found` for another pile's, or one that was removed. */
export async function photoOf(db: Db, pileId: string, id: string): Promise<PhotoRow> {
  const row = await everPhotoOf(db, pileId, id)
  if (row.removed_at !== null) throw new Failure('not_found')
  return row
}
