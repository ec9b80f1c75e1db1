import type { Clock } from '../base/clock.ts'
import { Failure } from '../base/failures.ts'
import { newId } from '../base/ids.ts'
import type { Flag } from '../garment/grade.ts'
import type { Store } from '../store/open.ts'
import type { Db } from '../store/schema.ts'
import {
  appendDecision,
  type GarmentVerdict,
  garmentVerdicts,
  onLockedPile,
  readReason,
} from './decisions.ts'
import { projectLaidOut } from './laid-out.ts'

/** What staff decided of one reason of a garment's grade. */
export interface FlagDecision {
  readonly item: number
  readonly flag: string
  readonly verdict: GarmentVerdict
  readonly reason: string
  /** The account's name. */
  readonly by: string
  readonly at: number
}

/** Of one pile, oldest first; the last of a garment's flag stands. */
export async function flagDecisionsOf(db: Db, pileId: string): Promise<FlagDecision[]> {
  const rows = await db
    .selectFrom('flag_decision')
    .innerJoin('account', 'account.id', 'flag_decision.who')
    .selectAll('flag_decision')
    .select('account.name')
    .where('pile_id', '=', pileId)
    .orderBy('at')
    .execute()
  return rows.map(({ item, flag, verdict, reason, name, at }) => ({
    item,
    flag,
    verdict: verdict as GarmentVerdict,
    reason,
    by: name,
    at,
  }))
}

export const standingFlag = (
  decisions: readonly FlagDecision[],
  item: number,
  flag: string,
): FlagDecision | undefined => decisions.findLast((one) => one.item === item && one.flag === flag)

/** Reasons that hold a garment up until a person has looked. */
export const graveFlags = (flags: readonly Flag[]): readonly Flag[] =>
  flags.filter(({ severity }) => severity === 'eyes' || severity === 'home')

const gravity = (verdict: GarmentVerdict): number => garmentVerdicts.indexOf(verdict)

export interface DecidingFlag {
  readonly item: number
  readonly flag: string
  readonly verdict: GarmentVerdict
  readonly reason: string
  /** The account's id. */
  readonly who: string
  /** When the newest decision of this flag that the page showed was made; 0: it showed none. */
  readonly seen: number
}

/**
 * Decides of one reason of a garment. Once each grave reason of the garment is decided, the garment is too: by the
 * gravest of them, whose reasons it keeps. Throws `reason_missing`, `answer_too_long`, `pile_decided`, `not_found`
 * where the garment has no such reason, or `decided_meanwhile`.
 */
export async function decideFlag(
  store: Store,
  clock: Clock,
  pileId: string,
  deciding: DecidingFlag,
): Promise<void> {
  const { item, flag, verdict, who, seen } = deciding
  const reason = readReason(verdict, deciding.reason)
  await onLockedPile(store, pileId, async (db, subject) => {
    const garment = await db
      .selectFrom('garment')
      .select('flags')
      .where('pile_id', '=', pileId)
      .where('item', '=', item)
      .where('dropped', '=', 0)
      .executeTakeFirst()
    const grave = graveFlags(JSON.parse(garment?.flags ?? '[]') as Flag[])
    if (!grave.some(({ code }) => code === flag)) throw new Failure('not_found')
    if (subject.row.status === 'decided') throw new Failure('pile_decided')

    const before = await flagDecisionsOf(db, pileId)
    const stands = standingFlag(before, item, flag)
    if (stands?.verdict === verdict && stands.reason === reason) return
    if ((stands?.at ?? 0) > seen) throw new Failure('decided_meanwhile')
    const newest = Math.max(0, ...[...before, ...subject.decisions].map(({ at }) => at))
    const at = Math.max(clock(), newest + 1)
    await db
      .insertInto('flag_decision')
      .values({ id: newId(), pile_id: pileId, item, flag, verdict, reason, who, at })
      .execute()

    const now: FlagDecision[] = [...before, { item, flag, verdict, reason, by: '', at }]
    const settled = grave.flatMap(({ code }) => standingFlag(now, item, code) ?? [])
    if (settled.length === grave.length) {
      const gravest = Math.max(...settled.map((one) => gravity(one.verdict)))
      await appendDecision(db, () => at + 1, subject, {
        item,
        verdict: garmentVerdicts[gravest]!,
        reason: [...new Set(settled.map((one) => one.reason))]
          .filter((one) => one !== '')
          .join('\n'),
        who,
        seen: Number.MAX_SAFE_INTEGER,
      })
    }
    await projectLaidOut(db, pileId)
  })
}
