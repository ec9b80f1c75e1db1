import { Failure } from '../base/failures.ts'
import { newId } from '../base/ids.ts'
import type { FactSet, SettableFact } from '../intake/set-facts.ts'
import type { Db, FactSource } from '../store/schema.ts'

/** A fact that the workshop set, with who did and why. */
export interface KeptFactSet extends FactSet {
  readonly id: string
  /** The garment's number. */
  readonly item: number
  readonly reason: string
  /** The account's id and name. */
  readonly who: { readonly id: string; readonly name: string }
  readonly undone: { readonly at: number; readonly by: string } | null
}

/** Of one pile, oldest first, undone ones too. */
export async function factSetsOf(db: Db, pileId: string): Promise<KeptFactSet[]> {
  const rows = await db
    .selectFrom('fact_set')
    .innerJoin('account', 'account.id', 'fact_set.who')
    .leftJoin('account as undoer', 'undoer.id', 'fact_set.undone_by')
    .selectAll('fact_set')
    .select(['account.name', 'undoer.name as undoer_name'])
    .where('pile_id', '=', pileId)
    .orderBy('fact_set.at')
    .execute()
  return rows.map(({ who, name, fact, undone_at, undoer_name, ...row }) => ({
    id: row.id,
    item: row.item,
    fact: fact as SettableFact,
    value: row.value,
    source: row.source,
    reason: row.reason,
    who: { id: who, name },
    at: row.at,
    undone: undone_at === null ? null : { at: undone_at, by: undoer_name ?? '' },
  }))
}

/** Those that stand, by garment. */
export function standingFacts(
  sets: readonly KeptFactSet[],
): ReadonlyMap<number, readonly KeptFactSet[]> {
  const found = new Map<number, KeptFactSet[]>()
  for (const one of sets.filter(({ undone }) => !undone)) {
    found.set(one.item, [...(found.get(one.item) ?? []), one])
  }
  return found
}

/** When the newest was set or undone, of all or of one garment; 0: there is none. */
export const newestSet = (sets: readonly KeptFactSet[], item?: number): number =>
  Math.max(
    0,
    ...sets
      .filter((one) => item === undefined || one.item === item)
      .flatMap(({ at, undone }) => [at, undone?.at ?? 0]),
  )

/** The newest of a fact of a garment that stands. */
export const lastKept = (
  sets: readonly KeptFactSet[],
  item: number,
  fact: SettableFact,
): KeptFactSet | undefined =>
  sets.findLast((one) => one.item === item && one.fact === fact && !one.undone)

export interface NewFactSet {
  readonly item: number
  readonly fact: SettableFact
  readonly value: string
  readonly source: FactSource
  readonly reason: string
  /** The account's id. */
  readonly who: string
  readonly at: number
}

/** Sets a fact in the caller's transaction. */
export async function insertFactSet(db: Db, pileId: string, set: NewFactSet): Promise<void> {
  await db
    .insertInto('fact_set')
    .values({ id: newId(), pile_id: pileId, ...set, undone_at: null, undone_by: null })
    .execute()
}

/** Undoes one that stands, in the caller's transaction. Throws `not_found`. */
export async function undoFactSet(
  db: Db,
  pileId: string,
  id: string,
  by: { readonly who: string; readonly at: number },
): Promise<void> {
  const { numUpdatedRows } = await db
    .updateTable('fact_set')
    .set({ undone_at: by.at, undone_by: by.who })
    .where('id', '=', id)
    .where('pile_id', '=', pileId)
    .where('undone_at', 'is', null)
    .executeTakeFirst()
  if (numUpdatedRows === 0n) throw new Failure('not_found')
}
