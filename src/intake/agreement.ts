import type { Db } from '../store/schema.ts'
import type { AgreedFigures } from './agreed-figures.ts'
import { refreshWaiting } from './waiting.ts'

/** What was shown, a paper in each language, and the same in numbers. */
export interface Kept {
  readonly words: Readonly<Record<string, unknown>>
  readonly figures: AgreedFigures | null
}

/** Keeps words as the next version of a pile; the pile is locked. Returns the version. */
export async function keepVersion(
  db: Db,
  pileId: string,
  kind: 'confirmed' | 'offer',
  { words, figures }: Kept,
  at: number,
): Promise<number> {
  const version = (await newestVersion(db, pileId)) + 1
  await db
    .insertInto('agreed')
    .values({
      pile_id: pileId,
      version,
      kind,
      body: JSON.stringify(words),
      figures: figures && JSON.stringify(figures),
      at,
    })
    .execute()
  return version
}

/** 0 before anything was kept. */
export async function newestVersion(db: Db, pileId: string): Promise<number> {
  const row = await db
    .selectFrom('agreed')
    .select(({ fn }) => fn.max('version').as('version'))
    .where('pile_id', '=', pileId)
    .executeTakeFirst()
  return row?.version ?? 0
}

/** Closes an open pile and keeps, word for word, what was shown: a paper in each language. */
export async function freeze(db: Db, pileId: string, kept: Kept, at: number): Promise<void> {
  await keepVersion(db, pileId, 'confirmed', kept, at)
  await db
    .updateTable('pile')
    .set({ status: 'confirmed', confirmed_at: at, changed_at: at })
    .where('id', '=', pileId)
    .execute()
  await refreshWaiting(db, pileId)
}

/** The newest papers of a confirmed pile, by language; null where it never was. */
export async function frozen<Paper>(
  db: Db,
  pileId: string,
): Promise<Readonly<Record<string, Paper>> | null> {
  const row = await db
    .selectFrom('agreed')
    .select('body')
    .where('pile_id', '=', pileId)
    .where('kind', '=', 'confirmed')
    .orderBy('version', 'desc')
    .executeTakeFirst()
  return row ? JSON.parse(row.body) : null
}

/** The figures of the last two times that a pile was confirmed, the newer first; null: kept without. */
export async function lastFigures(db: Db, pileId: string): Promise<(AgreedFigures | null)[]> {
  const rows = await db
    .selectFrom('agreed')
    .select('figures')
    .where('pile_id', '=', pileId)
    .where('kind', '=', 'confirmed')
    .orderBy('version', 'desc')
    .limit(2)
    .execute()
  return rows.map(({ figures }) => (figures ? (JSON.parse(figures) as AgreedFigures) : null))
}
