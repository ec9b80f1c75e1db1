import { sha256 } from '../base/ids.ts'
import type { Db } from './schema.ts'

/** How often something was done within a window, and when that window ends, ms UTC. */
export interface Used {
  readonly uses: number
  readonly until: number
}

/** Windows lie at the same times for every process, so that none need tell the others when one began. */
export const windowEnd = (at: number, windowMs: number): number =>
  (Math.floor(at / windowMs) + 1) * windowMs

/**
 * Counts `by` more uses of `what` in the window of `windowMs` that holds `at`, over every process on this store.
 * Only a hash of `what` is kept, and not beyond its window.
 */
export async function countUses(
  db: Db,
  { what, windowMs, at, by = 1 }: { what: string; windowMs: number; at: number; by?: number },
): Promise<Used> {
  const until = windowEnd(at, windowMs)
  const { uses } = await db
    .insertInto('use_count')
    .values({ what: sha256(`${windowMs} ${what}`), until_at: until, uses: by })
    .onConflict((conflict) =>
      conflict
        .columns(['what', 'until_at'])
        .doUpdateSet((eb) => ({ uses: eb('use_count.uses', '+', by) })),
    )
    .returning('uses')
    .executeTakeFirstOrThrow()
  return { uses, until }
}

/** Forgets the counts of windows that have ended. */
export async function clearUses(db: Db, at: number): Promise<void> {
  await db.deleteFrom('use_count').where('until_at', '<=', at).execute()
}
