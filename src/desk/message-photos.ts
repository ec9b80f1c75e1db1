import { Failure } from '../base/failures.ts'
import { everPhotoOf, keepPhotos } from '../intake/photos.ts'
import type { Db, PhotoRow } from '../store/schema.ts'
import { shownAtDesk } from './decisions.ts'

/** So many photos may come with one message. */
export const mostMessagePhotos = 3

/** What a photo answers that came with a message and waits for it to be kept. */
export const messageDraft = 'message'

const ofMessage = (id: string): string => `${messageDraft} ${id}`

/** Ids of the photos of each message of a pile, by the message's. */
export async function messagePhotos(
  db: Db,
  pileId: string,
): Promise<ReadonlyMap<string, readonly string[]>> {
  const rows = await db
    .selectFrom('photo')
    .select(['id', 'question'])
    .where('pile_id', '=', pileId)
    .where('question', 'like', `${messageDraft} %`)
    .where('kept', '=', 1)
    .where('removed_at', 'is', null)
    .orderBy('at')
    .orderBy('id')
    .execute()
  const found = new Map<string, string[]>()
  for (const { id, question } of rows) {
    const message = question!.slice(messageDraft.length + 1)
    found.set(message, [...(found.get(message) ?? []), id])
  }
  return found
}

/** Keeps photos with the message that they came with, in its transaction. */
export async function keepWithMessage(
  db: Db,
  pileId: string,
  message: string,
  photos: readonly string[],
): Promise<void> {
  if (photos.length === 0) return
  await db
    .updateTable('photo')
    .set({ question: ofMessage(message) })
    .where('pile_id', '=', pileId)
    .where('question', '=', messageDraft)
    .where('id', 'in', photos)
    .execute()
  await keepPhotos(db, pileId, photos)
}

/**
 * A photo as the workshop may look at it: of an open intake, which is its customer's alone, those that came with a
 * message. Throws `not_found`.
 */
export async function photoAtDesk(db: Db, reference: string, id: string): Promise<PhotoRow> {
  const number = /^\d{1,9}$/.test(reference) ? Number(reference) : null
  const pile = await db
    .selectFrom('pile')
    .select(['id', 'status'])
    .where((eb) => (number === null ? eb('id', '=', reference) : eb('number', '=', number)))
    .executeTakeFirst()
  if (!pile) throw new Failure('not_found')
  const photo = await everPhotoOf(db, pile.id, id)
  const isWritten = photo.question?.startsWith(`${messageDraft} `) ?? false
  if (!isWritten && !shownAtDesk.includes(pile.status)) throw new Failure('not_found')
  return photo
}
