import type { Clock } from '../base/clock.ts'
import { Failure } from '../base/failures.ts'
import type { Knowledge } from '../intake/knowledge.ts'
import type { Store } from '../store/open.ts'
import type { Db } from '../store/schema.ts'
import { appendDecision, decisionsOf, readReason } from './decisions.ts'
import { rolesGiven } from './garment-roles.ts'
import {
  changeMarks,
  type MarkChange,
  newestMark,
  type PlanMark,
  planMarksOf,
} from './plan-marks.ts'
import { projectKnown } from './set-facts.ts'
import { type Change, unknownIn } from './tries.ts'
import { choosing } from './wish-marks.ts'

export interface TakingUp {
  readonly changes: readonly Change[]
  readonly reason: string
  /** The account's id. */
  readonly who: string
  /** What `newestAtDesk` gave when the page was made. */
  readonly seen: number
}

const both = (a: MarkChange, b: MarkChange): MarkChange => ({
  undo: [...a.undo, ...b.undo],
  add: [...a.add, ...b.add],
})

function markChange(marks: readonly PlanMark[], changes: readonly Change[]): MarkChange {
  let all: MarkChange = { undo: [], add: [] }
  for (const change of changes) {
    if (change.change === 'roles') {
      all = both(all, rolesGiven(marks, change.garment, change.roles))
    }
  }
  const layout = changes.find((one) => one.change === 'layout')?.layout
  const size = changes.find((one) => one.change === 'size')?.size
  return both(all, choosing(marks, { ...(layout && { layout }), ...(size && { size }) }))
}

/** When the newest decision or mark of a pile was made; 0: there is none. */
export async function newestAtDesk(db: Db, pileId: string): Promise<number> {
  const decisions = await decisionsOf(db, pileId)
  return Math.max(decisions.at(-1)?.at ?? 0, newestMark(await planMarksOf(db, pileId)))
}

/**
 * Makes a way of `what-if` the pile's own: its layout and size, the roles that garments play, the garments that are
 * taken or left out, which are decisions with the reason given. All or nothing. Throws `not_found`,
 * `way_not_real` where it counts on a garment that nobody has sent, `pile_decided`, `reason_missing`,
 * `answer_too_long`, or `decided_meanwhile`.
 */
export const takeUp = (
  at: { readonly store: Store; readonly clock: Clock; readonly knowledge: Knowledge },
  pileId: string,
  { changes, reason: raw, who, seen }: TakingUp,
): Promise<void> => {
  const reason = readReason('decline', raw)
  if (changes.some(({ change }) => change === 'more')) throw new Failure('way_not_real')
  return changeMarks(
    at,
    pileId,
    who,
    async (marks, db, row) => {
      if (row.status === 'decided') throw new Failure('pile_decided')
      const garments = await db
        .selectFrom('garment')
        .select('item')
        .where('pile_id', '=', pileId)
        .where('dropped', '=', 0)
        .execute()
      const numbers = garments.map(({ item }) => item)
      if (unknownIn(changes, numbers, at.knowledge.layouts)) throw new Failure('not_found')
      if ((await newestAtDesk(db, pileId)) > seen) throw new Failure('decided_meanwhile')
      return markChange(marks, changes)
    },
    async (db, row) => {
      for (const change of changes) {
        if (change.change !== 'without' && change.change !== 'take') continue
        const subject = { row, decisions: await decisionsOf(db, pileId) }
        await appendDecision(db, at.clock, subject, {
          item: change.garment,
          verdict: change.change === 'take' ? 'take' : 'decline',
          reason,
          who,
          seen: Number.MAX_SAFE_INTEGER,
        })
      }
      await projectKnown(db, at.knowledge, row)
    },
  )
}
