import type { Look } from '../photo/look/looked.ts'
import type { Db } from '../store/schema.ts'
import type { View } from './spot-place.ts'

/** A photo on which spots may be marked. */
export interface SpotPhoto {
  readonly id: string
  /** Pixels of the upright picture. */
  readonly width: number
  readonly height: number
  /** What was seen on it; null: nobody looked, or the looking failed. */
  readonly look: Look | null
  /** The side of the garment that it shows; null: neither, as a close-up. */
  readonly view: View | null
}

/** Those of a pile's photos that are still there, in the order of `ids`. */
export async function spotPhotos(
  db: Db,
  pileId: string,
  ids: readonly string[],
): Promise<SpotPhoto[]> {
  if (ids.length === 0) return []
  const rows = await db
    .selectFrom('photo')
    .select(['id', 'width', 'height', 'look'])
    .where('pile_id', '=', pileId)
    .where('id', 'in', ids)
    .where('removed_at', 'is', null)
    .execute()
  const found = new Map(rows.map((row) => [row.id, row]))
  return ids.flatMap((id) => {
    const row = found.get(id)
    if (!row) return []
    const look = row.look === null ? null : (JSON.parse(row.look) as Look)
    return [{ ...row, look, view: 'front' }]
  })
}
