import { Failure } from '../base/failures.ts'
import { newId } from '../base/ids.ts'
import { lengthOf } from '../flow/sense.ts'
import { cleanText } from '../flow/text.ts'
import type { Db, PileRow } from '../store/schema.ts'
import type { LeavingKind } from '../store/schema-agreement.ts'
import { hasLeftHome, milestonesOf } from './milestones.ts'
import { endAll, supersede } from './offers.ts'
import { insertNote } from './rows.ts'
import { refreshWaiting } from './waiting.ts'

/** Characters of why a pile is withdrawn; it need not be told. */
export const leavingLimits = { longest: 2000 } as const

/** The question under which a wish to withdraw, or to change, stands among a pile's notes. */
export const leavingQuestion = 'leaving'

interface Wanting {
  readonly reason: string
  readonly idem: string
  readonly at: number
}

function readReason(raw: string): string {
  const reason = cleanText(raw)
  const { longest } = leavingLimits
  if (lengthOf(reason) > longest) throw new Failure('answer_too_long', { longest })
  return reason
}

const isKept = async (db: Db, pileId: string, idem: string): Promise<boolean> =>
  (await db
    .selectFrom('leaving')
    .select('id')
    .where('pile_id', '=', pileId)
    .where('idem', '=', idem)
    .executeTakeFirst()) !== undefined

const insert = (db: Db, pileId: string, kind: LeavingKind, { reason, idem, at }: Wanting) =>
  db
    .insertInto('leaving')
    .values({ id: newId(), pile_id: pileId, kind, reason, idem, at })
    .execute()

/**
 * Gives a pile back to its customer, to be changed on the same answers; what was accepted is superseded
 * and stays promised. Throws `pile_withdrawn`, or `too_late_to_change` once the box is on its way.
 */
export async function reopen(db: Db, pile: PileRow, idem: string, at: number): Promise<void> {
  if (pile.status === 'open' || (await isKept(db, pile.id, idem))) return
  if (pile.status === 'withdrawn') throw new Failure('pile_withdrawn')
  if (hasLeftHome(await milestonesOf(db, pile.id))) throw new Failure('too_late_to_change')
  await supersede(db, pile.id, at)
  await insert(db, pile.id, 'changed', { reason: '', idem, at })
  await db.updateTable('pile').set({ status: 'open' }).where('id', '=', pile.id).execute()
  await refreshWaiting(db, pile.id)
}

/**
 * Takes a pile back for good: nothing is deleted, and nothing is promised any more. Once the box is on
 * its way the wish becomes a note that a person acts on. Throws `answer_too_long`; `not_found` for a
 * pile that never was confirmed.
 */
export async function withdraw(db: Db, pile: PileRow, leaving: Wanting): Promise<void> {
  const kept = { ...leaving, reason: readReason(leaving.reason) }
  if (pile.confirmed_at === null) throw new Failure('not_found')
  if (pile.status === 'withdrawn' || (await isKept(db, pile.id, kept.idem))) return
  if (hasLeftHome(await milestonesOf(db, pile.id))) {
    const note = { pileId: pile.id, item: 0, question: leavingQuestion, text: kept.reason }
    await insertNote(db, { ...note, at: kept.at })
    await insert(db, pile.id, 'asked', kept)
    await refreshWaiting(db, pile.id)
    return
  }
  await endAll(db, pile.id, kept.at)
  await insert(db, pile.id, 'withdrawn', kept)
  await db.updateTable('pile').set({ status: 'withdrawn' }).where('id', '=', pile.id).execute()
  await refreshWaiting(db, pile.id)
}

export interface Leaving {
  readonly kind: LeavingKind
  readonly reason: string
  readonly at: number
}

/** Every time a customer took the pile back, or asked to; the newest first. */
export const leavingsOf = (db: Db, pileId: string): Promise<Leaving[]> =>
  db
    .selectFrom('leaving')
    .select(['kind', 'reason', 'at'])
    .where('pile_id', '=', pileId)
    .orderBy('at', 'desc')
    .execute()
