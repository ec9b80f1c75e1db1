import type { Db } from '../store/schema.ts'
import { refreshWaiting } from './waiting.ts'

/** Closes an open pile and keeps, word for word, what was shown: a paper in each language. */
export async function freeze(
  db: Db,
  pileId: string,
  shown: Readonly<Record<string, unknown>>,
  at: number,
): Promise<void> {
  await db
    .insertInto('agreed')
    .values({ pile_id: pileId, version: 1, kind: 'confirmed', body: JSON.stringify(shown), at })
    .execute()
  await db
    .updateTable('pile')
    .set({ status: 'confirmed', confirmed_at: at, changed_at: at })
    .where('id', '=', pileId)
    .execute()
  await refreshWaiting(db, pileId)
}

/** The newest papers of a confirmed pile, by language; null while it is open. */
export async function frozen<Paper>(
  db: Db,
  pileId: string,
): Promise<Readonly<Record<string, Paper>> | null> {
  const row = await db
    .selectFrom('agreed')
    .select('body')
    .where('pile_id', '=', pileId)
    .orderBy('version', 'desc')
    .executeTakeFirst()
  return row ? JSON.parse(row.body) : null
}
