import type { Look } from '../photo/look/looked.ts'
import type { Db, PhotoSide } from '../store/schema.ts'
import type { View } from './spot-place.ts'

/** A photo on which spots may be marked. */
export interface SpotPhoto {
  readonly id: string
  /** Pixels of the upright picture. */
  readonly width: number
  readonly height: number
  /** What was seen on it; null: nobody looked, or the looking failed. */
  readonly look: Look | null
  /** What it was told to show; null: nobody told. */
  readonly shows: PhotoSide | null
  /** The side of the garment that marks are taken to lie on; null: the photo does not tell. */
  readonly view: View | null
}

/** A photo of which nobody told is taken to show the front, as most do: common practice, no source. */
const viewOf = (shows: PhotoSide | null): View | null =>
  shows === 'close-up' ? null : (shows ?? 'front')

/** Those of a pile's photos that are still there, in the order of `ids`. */
export async function spotPhotos(
  db: Db,
  pileId: string,
  ids: readonly string[],
): Promise<SpotPhoto[]> {
  if (ids.length === 0) return []
  const rows = await db
    .selectFrom('photo')
    .select(['id', 'width', 'height', 'look', 'shows'])
    .where('pile_id', '=', pileId)
    .where('id', 'in', ids)
    .where('removed_at', 'is', null)
    .execute()
  const found = new Map(rows.map((row) => [row.id, row]))
  return ids.flatMap((id) => {
    const row = found.get(id)
    if (!row) return []
    const look = row.look === null ? null : (JSON.parse(row.look) as Look)
    return [{ ...row, look, view: viewOf(row.shows) }]
  })
}
