import type { Clock } from '../base/clock.ts'
import { Failure } from '../base/failures.ts'
import { refreshWaiting } from '../intake/waiting.ts'
import type { Store } from '../store/open.ts'
import { lockPile } from '../store/rows.ts'
import type { Db } from '../store/schema.ts'

/** What a customer left to a person, and who has seen to it. */
export interface Note {
  readonly id: string
  /** The garment's number; 0: the pile. */
  readonly item: number
  readonly question: string
  readonly text: string
  readonly at: number
  readonly settled: { readonly at: number; readonly by: string | null } | null
}

/** Of one pile, oldest first. */
export async function notesOf(db: Db, pileId: string): Promise<Note[]> {
  const rows = await db
    .selectFrom('note')
    .leftJoin('account', 'account.id', 'note.settled_by')
    .selectAll('note')
    .select('account.name')
    .where('pile_id', '=', pileId)
    .orderBy('note.at')
    .orderBy('note.id')
    .execute()
  return rows.map(({ id, item, question, text, at, settled_at, name }) => ({
    id,
    item,
    question,
    text,
    at,
    settled: settled_at === null ? null : { at: settled_at, by: name },
  }))
}

/** Marks a note as seen to. Who did so first stays. Throws `not_found` for another pile's note. */
export async function settleNote(
  store: Store,
  clock: Clock,
  pileId: string,
  noteId: string,
  who: string,
): Promise<void> {
  await store.transaction(async (trx) => {
    await lockPile(trx, pileId)
    await trx
      .updateTable('note')
      .set({ settled_at: clock(), settled_by: who })
      .where('id', '=', noteId)
      .where('pile_id', '=', pileId)
      .where('settled_at', 'is', null)
      .execute()
    const note = await trx
      .selectFrom('note')
      .select('id')
      .where('id', '=', noteId)
      .where('pile_id', '=', pileId)
      .executeTakeFirst()
    if (!note) throw new Failure('not_found')
    await refreshWaiting(trx, pileId)
  })
}
