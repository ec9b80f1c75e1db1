import { Failure } from '../base/failures.ts'
import { newId } from '../base/ids.ts'
import type { Db, Who } from '../store/schema.ts'
import type { MilestoneStep } from '../store/schema-agreement.ts'

/** When each step was first reached, by what was marked, by its parcels and by its sign-off; null: not yet. */
export type Milestones = Readonly<Record<MilestoneStep, number | null>>

/** What people marked, the earliest first. */
const marks = (db: Db, pileId: string) =>
  db
    .selectFrom('milestone')
    .select(['step', 'at'])
    .where('pile_id', '=', pileId)
    .where('undone_at', 'is', null)
    .orderBy('at')
    .execute()

/** Steps that somebody marked by hand: they alone can be taken back by hand. */
export const markedSteps = async (db: Db, pileId: string): Promise<ReadonlySet<MilestoneStep>> =>
  new Set((await marks(db, pileId)).map(({ step }) => step))

export async function milestonesOf(db: Db, pileId: string): Promise<Milestones> {
  const rows = await marks(db, pileId)
  const parcels = await db
    .selectFrom('parcel')
    .innerJoin('custody', (join) =>
      join
        .onRef('custody.pile_id', '=', 'parcel.pile_id')
        .onRef('custody.subject', '=', 'parcel.subject'),
    )
    .select(['parcel.posted_at', 'parcel.arrived_at', 'custody.state'])
    .where('parcel.pile_id', '=', pileId)
    .where('custody.state', '!=', 'not-posted')
    .execute()
  const signedOff = await db
    .selectFrom('sign_off')
    .select('at')
    .where('pile_id', '=', pileId)
    .where('undone_at', 'is', null)
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
      // An arrival that was taken back leaves the day it was noted, and the parcel on its way.
      parcels.map(({ state, arrived_at }) => (state === 'announced' ? null : arrived_at)),
    ),
    done: first(
      'done',
      signedOff.map(({ at }) => at),
    ),
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
