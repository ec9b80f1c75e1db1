import { Failure } from '../base/failures.ts'
import { newId } from '../base/ids.ts'
import type { Db, Who } from '../store/schema.ts'
import type { MilestoneStep } from '../store/schema-agreement.ts'

/** When each step was first reached, by what was marked and by its parcels; null: not yet. */
export type Milestones = Readonly<Record<MilestoneStep, number | null>>

export async function milestonesOf(db: Db, pileId: string): Promise<Milestones> {
  const rows = await db
    .selectFrom('milestone')
    .select(['step', 'at'])
    .where('pile_id', '=', pileId)
    .where('undone_at', 'is', null)
    .orderBy('at')
    .execute()
  const parcels = await db
    .selectFrom('parcel')
    .select(['posted_at', 'arrived_at'])
    .where('pile_id', '=', pileId)
    .execute()
  const first = (step: MilestoneStep, times: readonly (number | null)[] = []) => {
    const noted = rows.filter((row) => row.step === step).map(({ at }) => at)
    const told = [...noted, ...times].filter((at) => at !== null)
    return told.length > 0 ? Math.min(...told) : null
  }
  return {
    posted: first(
      'posted',
      parcels.map(({ posted_at }) => posted_at),
    ),
    arrived: first(
      'arrived',
      parcels.map(({ arrived_at }) => arrived_at),
    ),
    done: first('done'),
  }
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
  if ((await milestonesOf(db, pileId))[step] !== null) return
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
