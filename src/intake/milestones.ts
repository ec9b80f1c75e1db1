import { Failure } from '../base/failures.ts'
import { newId } from '../base/ids.ts'
import type { Db, Who } from '../store/schema.ts'
import type { MilestoneStep } from '../store/schema-agreement.ts'

/** When each step was reached, as far as the customer is told; null: not yet. */
export type Milestones = Readonly<Record<MilestoneStep, number | null>>

export async function milestonesOf(db: Db, pileId: string): Promise<Milestones> {
  const rows = await db
    .selectFrom('milestone')
    .select(['step', 'at'])
    .where('pile_id', '=', pileId)
    .where('undone_at', 'is', null)
    .orderBy('at')
    .execute()
  const first = (step: MilestoneStep) => rows.find((row) => row.step === step)?.at ?? null
  return { posted: first('posted'), arrived: first('arrived'), done: first('done') }
}

/** True once the box is on its way: from then on a pile is neither changed nor withdrawn by a form alone. */
export const hasLeftHome = ({ posted, arrived, done }: Milestones): boolean =>
  posted !== null || arrived !== null || done !== null

/** Marks a step as reached; one that is reached already stays as it was. The pile is locked. */
export async function reach(
  db: Db,
  pileId: string,
  step: MilestoneStep,
  { who, at }: { readonly who: Who; readonly at: number },
): Promise<void> {
  const known = await milestonesOf(db, pileId)
  if (known[step] !== null) return
  await db
    .insertInto('milestone')
    .values({ id: newId(), pile_id: pileId, step, who, at, undone_at: null, undone_by: null })
    .execute()
}

/** Takes back a step that was marked by mistake. Throws `not_found` where it was not reached. */
export async function unreach(
  db: Db,
  pileId: string,
  step: MilestoneStep,
  { who, at }: { readonly who: Who; readonly at: number },
): Promise<void> {
  const rows = await db
    .selectFrom('milestone')
    .select('id')
    .where('pile_id', '=', pileId)
    .where('step', '=', step)
    .where('undone_at', 'is', null)
    .execute()
  if (rows.length === 0) throw new Failure('not_found')
  await db
    .updateTable('milestone')
    .set({ undone_at: at, undone_by: who })
    .where('pile_id', '=', pileId)
    .where('step', '=', step)
    .where('undone_at', 'is', null)
    .execute()
}
