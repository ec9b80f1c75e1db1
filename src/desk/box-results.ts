import { newId } from '../base/ids.ts'
import { cleanText } from '../flow/text.ts'
import type { Db } from '../store/schema.ts'
import type { BoxResult } from '../store/schema-custody.ts'
import type { Ledger } from './ledger.ts'

/** The newest result of each garment and thing, by its key. */
export interface CheckedRow {
  readonly subject: string
  readonly result: BoxResult
  readonly differs: readonly string[]
  readonly condition: readonly string[]
  readonly note: string
  readonly photos: readonly string[]
  readonly by: string
  readonly at: number
}

const listed = (text: string): string[] => (text === '' ? [] : text.split(','))

export async function boxChecksOf(
  db: Db,
  pileId: string,
): Promise<ReadonlyMap<string, CheckedRow>> {
  const rows = await db
    .selectFrom('box_check')
    .innerJoin('account', 'account.id', 'box_check.who')
    .selectAll('box_check')
    .select('account.name')
    .where('pile_id', '=', pileId)
    .orderBy('at')
    .execute()
  return new Map(
    rows.map(({ subject, result, differs, condition, note, photos, name, at }) => [
      subject,
      {
        subject,
        result,
        differs: listed(differs),
        condition: listed(condition),
        note,
        photos: JSON.parse(photos) as string[],
        by: name,
        at,
      },
    ]),
  )
}

/** Keeps what was said of one garment or thing; the newest result counts. */
export async function keepResult(
  { db, row, clock }: Ledger,
  result: Omit<CheckedRow, 'by' | 'at'> & { readonly who: string },
): Promise<void> {
  const { subject, differs, condition, note, photos, who } = result
  const last = await db
    .selectFrom('box_check')
    .select('at')
    .where('pile_id', '=', row.id)
    .orderBy('at', 'desc')
    .executeTakeFirst()
  await db
    .insertInto('box_check')
    .values({
      id: newId(),
      pile_id: row.id,
      subject,
      result: result.result,
      differs: differs.join(','),
      condition: condition.join(','),
      note: cleanText(note).slice(0, 2000),
      photos: JSON.stringify(photos),
      who,
      at: Math.max(clock(), (last?.at ?? 0) + 1),
    })
    .execute()
}
