import { cleanText } from '../flow/text.ts'
import type { Db } from '../store/schema.ts'
import type { At } from './moving.ts'
import { type Located, shouldBeHere } from './whereabouts.ts'

/** How a page names a subject of any pile: "147 3-L1". */
export const countKey = ({ pile, subject }: Pick<Located, 'pile' | 'subject'>): string =>
  `${pile} ${subject}`

export interface DayCount {
  readonly id: string
  readonly by: string
  readonly at: number
  readonly note: string
  readonly expected: number
  readonly seen: number
}

/** The newest counts. */
export async function dayCounts(db: Db, most = 14): Promise<DayCount[]> {
  const rows = await db
    .selectFrom('day_count')
    .innerJoin('account', 'account.id', 'day_count.who')
    .selectAll('day_count')
    .select('account.name')
    .orderBy('at', 'desc')
    .limit(most)
    .execute()
  return rows.map(({ id, name, at, note, expected, seen }) => ({
    id,
    by: name,
    at,
    note,
    expected,
    seen,
  }))
}

export interface NotSeen {
  readonly pile: number
  readonly subject: string
  readonly place: string | null
}

const counted = new Intl.Collator('en', { numeric: true })

/** What was not seen in one count. */
export async function notSeenIn(db: Db, id: string): Promise<NotSeen[]> {
  const rows = await db
    .selectFrom('day_count_line')
    .innerJoin('pile', 'pile.id', 'day_count_line.pile_id')
    .select(['pile.number', 'subject', 'place'])
    .where('count_id', '=', id)
    .where('seen', '=', 0)
    .execute()
  return rows
    .map(({ number, subject, place }) => ({ pile: number, subject, place }))
    .sort((a, b) => a.pile - b.pile || counted.compare(a.subject, b.subject))
}

/**
 * Keeps a count of everything that should be in the house at this moment; what was not ticked was not seen. `id` is the
 * page's own: the same form sent twice is one count. Returns false where it was kept already.
 */
export const keepCount = (
  { store, clock }: At,
  { id, ticked, note, who }: { id: string; ticked: readonly string[]; note: string; who: string },
): Promise<boolean> =>
  store.transaction(async (trx) => {
    const here = await shouldBeHere(trx)
    const seen = new Set(ticked)
    const lines = here.map((one) => ({
      count_id: id,
      pile_id: one.pileId,
      subject: one.subject,
      place: one.place,
      seen: (seen.has(countKey(one)) ? 1 : 0) as 0 | 1,
    }))
    const { numInsertedOrUpdatedRows } = await trx
      .insertInto('day_count')
      .values({
        id,
        who,
        at: clock(),
        note: cleanText(note).slice(0, 2000),
        expected: lines.length,
        seen: lines.filter((line) => line.seen === 1).length,
      })
      .onConflict((conflict) => conflict.column('id').doNothing())
      .executeTakeFirstOrThrow()
    if (numInsertedOrUpdatedRows === 0n) return false
    for (let from = 0; from < lines.length; from += 100) {
      await trx
        .insertInto('day_count_line')
        .values(lines.slice(from, from + 100))
        .execute()
    }
    return true
  })
