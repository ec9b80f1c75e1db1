import type { Clock } from '../base/clock.ts'
import { Failure } from '../base/failures.ts'
import { newId } from '../base/ids.ts'
import type { Store } from '../store/open.ts'
import { lockPile } from '../store/rows.ts'
import type { Db, MarkKind, PileRow } from '../store/schema.ts'
import { atTheDesk } from './decisions.ts'
import { projectLaidOut } from './laid-out.ts'

/** What staff fixed of a pile: the roles a garment may play, a piece that stays where it is, a spot on a photo. */
export interface PlanMark {
  readonly id: string
  readonly kind: MarkKind
  /** The garment's number; null: bought cloth. */
  readonly garment: number | null
  /** What is fixed; its shape is the kind's. */
  readonly body: unknown
  /** The account's id and name. */
  readonly who: { readonly id: string; readonly name: string }
  readonly at: number
  readonly undone: { readonly at: number; readonly by: string } | null
}

/** Of one pile, oldest first, undone ones too. */
export async function planMarksOf(db: Db, pileId: string): Promise<PlanMark[]> {
  const rows = await db
    .selectFrom('plan_mark')
    .innerJoin('account', 'account.id', 'plan_mark.who')
    .leftJoin('account as undoer', 'undoer.id', 'plan_mark.undone_by')
    .selectAll('plan_mark')
    .select(['account.name', 'undoer.name as undoer_name'])
    .where('pile_id', '=', pileId)
    .orderBy('plan_mark.at')
    .execute()
  return rows.map(({ id, kind, garment, body, who, name, at, undone_at, undoer_name }) => ({
    id,
    kind,
    garment,
    body: JSON.parse(body),
    who: { id: who, name },
    at,
    undone: undone_at === null ? null : { at: undone_at, by: undoer_name ?? '' },
  }))
}

/** Those of a kind that stand. */
export const standingMarks = (marks: readonly PlanMark[], kind: MarkKind): PlanMark[] =>
  marks.filter((mark) => mark.kind === kind && !mark.undone)

export interface MarkChange {
  /** Ids of marks that no longer stand. */
  readonly undo: readonly string[]
  readonly add: readonly Pick<PlanMark, 'kind' | 'garment' | 'body'>[]
}

/** When the newest mark was made or undone; 0: there is none. */
export const newestMark = (marks: readonly PlanMark[]): number =>
  Math.max(0, ...marks.flatMap(({ at, undone }) => [at, undone?.at ?? 0]))

/**
 * Undoes marks and makes others, by what `change` makes of all marks of the locked pile, so that two at the
 * desk take turns; `after` is what follows from it. `who` is the account's id. Throws `not_found` and what
 * `change` throws.
 */
export const changeMarks = (
  { store, clock }: { readonly store: Store; readonly clock: Clock },
  pileId: string,
  who: string,
  change: (marks: readonly PlanMark[], db: Db, row: PileRow) => MarkChange | Promise<MarkChange>,
  after: (db: Db, row: PileRow) => Promise<void> = () => Promise.resolve(),
): Promise<void> =>
  store.transaction(async (trx) => {
    const row = await lockPile(trx, pileId)
    if (!row || !atTheDesk.includes(row.status)) throw new Failure('not_found')
    const marks = await planMarksOf(trx, pileId)
    const { undo, add } = await change(marks, trx, row)
    // A clock that was set back may not change the order they were made in.
    const from = Math.max(clock(), newestMark(marks) + 1)
    for (const id of undo) {
      await trx
        .updateTable('plan_mark')
        .set({ undone_at: from, undone_by: who })
        .where('id', '=', id)
        .where('pile_id', '=', pileId)
        .where('undone_at', 'is', null)
        .execute()
    }
    for (const [n, { kind, garment, body }] of add.entries()) {
      await trx
        .insertInto('plan_mark')
        .values({
          id: newId(),
          pile_id: pileId,
          kind,
          garment,
          body: JSON.stringify(body),
          who,
          at: from + n,
          undone_at: null,
          undone_by: null,
        })
        .execute()
    }
    await after(trx, row)
    await projectLaidOut(trx, pileId)
  })
