import { z } from 'zod'
import type { Clock } from '../base/clock.ts'
import { Failure } from '../base/failures.ts'
import { newId } from '../base/ids.ts'
import type { PhotoStore } from '../photo/keep.ts'
import type { Lane } from '../photo/lane.ts'
import { type SheetKind, sheetKinds } from '../photo/look/looked.ts'
import { type MarkedSheet, marksOff } from '../photo/look/marked-sheet.ts'
import type { Sizes } from '../photo/look/measured.ts'
import type { Store } from '../store/open.ts'
import { lockPile } from '../store/rows.ts'
import type { Db, PileRow } from '../store/schema.ts'
import { photoOf } from './photos.ts'

/** A corner as it is marked: shares of the upright picture's width and height. */
export type Corner = readonly [x: number, y: number]

/** The sheet that a person marked on a photo. */
export interface SheetMark {
  readonly sheet: SheetKind
  readonly corners: readonly Corner[]
  readonly sizes: Sizes
  /** The customer, or the name of a member of staff. */
  readonly by: 'customer' | { readonly staff: string }
  /** Milliseconds UTC. */
  readonly at: number
}

const standing = (db: Db, pileId: string, ids: readonly string[]) =>
  db
    .selectFrom('sheet_mark')
    .leftJoin('account', 'account.id', 'sheet_mark.who')
    .select([
      'sheet_mark.photo_id',
      'sheet_mark.sheet',
      'sheet_mark.corners',
      'sheet_mark.sizes',
      'sheet_mark.who',
      'sheet_mark.at',
      'account.name',
    ])
    .where('sheet_mark.pile_id', '=', pileId)
    .where('sheet_mark.photo_id', 'in', ids)
    .where('sheet_mark.undone_at', 'is', null)
    .orderBy('sheet_mark.at')
    .orderBy('sheet_mark.id')
    .execute()

/** The newest mark that stands on each of these photos of a pile, by the photo's id. */
export async function sheetMarksOf(
  db: Db,
  pileId: string,
  ids: readonly string[],
): Promise<ReadonlyMap<string, SheetMark>> {
  if (ids.length === 0) return new Map()
  const rows = await standing(db, pileId, ids)
  return new Map(
    rows.map(({ photo_id, sheet, corners, sizes, who, name, at }): [string, SheetMark] => [
      photo_id,
      {
        sheet,
        corners: JSON.parse(corners) as Corner[],
        sizes: JSON.parse(sizes) as Sizes,
        by: who === null ? 'customer' : { staff: name ?? '' },
        at,
      },
    ]),
  )
}

/** The four corners as a form holds them; loose. */
export interface CornersSent {
  readonly sheet: string
  /** Percent of the picture's width and height; empty where none is marked yet. */
  readonly corners: readonly { readonly x: string; readonly y: string }[]
  /** Whether any was tapped on a small picture. */
  readonly coarse: boolean
}

const percent = z
  .string()
  .regex(/^\d{1,3}(\.\d{1,8})?$/)
  .transform(Number)
  .pipe(z.number().min(0).max(100))

/** The corners of a form that are set. Throws `corner_outside` for one that lies nowhere on the photo. */
export function cornersIn({ corners }: Pick<CornersSent, 'corners'>): Corner[] {
  return corners.flatMap(({ x, y }): Corner[] => {
    if (x.trim() === '' && y.trim() === '') return []
    const at = z.tuple([percent, percent]).safeParse([x.trim(), y.trim()])
    if (!at.success) throw new Failure('corner_outside')
    return [[at.data[0] / 100, at.data[1] / 100]]
  })
}

/** Throws `sheet_not_named`, `corner_outside`, `corners_incomplete` {left}. */
export function readMarkedSheet(sent: CornersSent): MarkedSheet {
  const sheet = sheetKinds.find((one) => one === sent.sheet)
  if (!sheet) throw new Failure('sheet_not_named')
  const corners = cornersIn(sent)
  if (corners.length !== 4) throw new Failure('corners_incomplete', { left: 4 - corners.length })
  return { sheet, corners, off: sent.coarse ? marksOff.coarse : marksOff.fine }
}

export interface MarkingContext {
  readonly store: Store
  readonly clock: Clock
  readonly lane: Lane
  readonly photos: PhotoStore
}

/** Who marks, and while the pile is in which states they may. */
export interface Marker {
  /** The account's id; null: the customer. */
  readonly who: string | null
  readonly mayIn: readonly PileRow['status'][]
}

/** A locked pile that this person may mark photos of. */
async function locked(trx: Db, pileId: string, { mayIn, who }: Marker): Promise<void> {
  const row = await lockPile(trx, pileId)
  if (row && mayIn.includes(row.status)) return
  throw new Failure(row && who === null ? 'pile_confirmed' : 'not_found')
}

/**
 * Measures a photo of a pile by the sheet that a person marked on it, and keeps both; a form sent twice is kept
 * once. Throws what `Lane.measure` throws, `not_found`, `pile_confirmed`.
 */
export async function markSheet(
  { store, clock, lane, photos }: MarkingContext,
  pileId: string,
  photoId: string,
  marked: MarkedSheet,
  marker: Marker,
): Promise<Sizes> {
  const { hash, focal35 } = await photoOf(store.db, pileId, photoId)
  const sizes = await lane.measure(await photos.open(hash, 'full'), marked, focal35)
  await store.transaction(async (trx) => {
    await locked(trx, pileId, marker)
    await photoOf(trx, pileId, photoId)
    const newest = (await standing(trx, pileId, [photoId])).at(-1)
    const corners = JSON.stringify(marked.corners)
    const isSame =
      newest?.corners === corners && newest.sheet === marked.sheet && newest.who === marker.who
    if (isSame) return
    await trx
      .insertInto('sheet_mark')
      .values({
        id: newId(),
        pile_id: pileId,
        photo_id: photoId,
        sheet: marked.sheet,
        corners,
        sizes: JSON.stringify(sizes),
        who: marker.who,
        // A clock that was set back may not change which is the newest.
        at: Math.max(clock(), (newest?.at ?? 0) + 1),
        undone_at: null,
        undone_by: null,
      })
      .execute()
  })
  return sizes
}

/** Takes marks of a photo back, a customer their own, staff all: what was found by itself counts again. */
export const unmarkSheet = (
  { store, clock }: Pick<MarkingContext, 'store' | 'clock'>,
  pileId: string,
  photoId: string,
  marker: Marker,
): Promise<void> =>
  store.transaction(async (trx) => {
    await locked(trx, pileId, marker)
    await photoOf(trx, pileId, photoId)
    await trx
      .updateTable('sheet_mark')
      .set({ undone_at: clock(), undone_by: marker.who })
      .where('pile_id', '=', pileId)
      .where('photo_id', '=', photoId)
      .where('undone_at', 'is', null)
      .$if(marker.who === null, (query) => query.where('who', 'is', null))
      .execute()
  })
