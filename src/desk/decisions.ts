import type { Clock } from '../base/clock.ts'
import { Failure } from '../base/failures.ts'
import { newId } from '../base/ids.ts'
import { lengthOf } from '../flow/sense.ts'
import { cleanText } from '../flow/text.ts'
import { endSent } from '../intake/offers.ts'
import type { Decided } from '../papers/checklist-decided.ts'
import type { Store } from '../store/open.ts'
import { lockPile } from '../store/rows.ts'
import type { Db, DecisionRow, PileRow, PileStatus } from '../store/schema.ts'
import { projectLaidOut } from './laid-out.ts'

export const garmentVerdicts = ['take', 'care', 'ask', 'decline'] as const
export const pileVerdicts = ['accept', 'hold', 'decline'] as const

export type GarmentVerdict = (typeof garmentVerdicts)[number]
export type PileVerdict = (typeof pileVerdicts)[number]

const becomes: Readonly<Record<GarmentVerdict, Decided>> = {
  take: 'comes',
  care: 'comes',
  ask: 'open',
  decline: 'stays',
}

/** Verdicts that somebody else has to live with, and why is told. */
export const wantsReason = (verdict: GarmentVerdict | PileVerdict): boolean =>
  verdict === 'ask' || verdict === 'decline' || verdict === 'hold'

/** Characters. */
export const reasonLimits = { shortest: 3, longest: 2000 } as const

export interface Decision {
  readonly id: string
  /** The garment's number; null: the whole pile. */
  readonly item: number | null
  readonly verdict: GarmentVerdict | PileVerdict
  readonly reason: string
  /** The account's id and name. */
  readonly who: { readonly id: string; readonly name: string }
  readonly at: number
}

/** A decision as a page sends it. */
export interface Deciding {
  readonly reason: string
  /** The account's id. */
  readonly who: string
  /** When the newest decision that the page showed was made; 0: it showed none. */
  readonly seen: number
}

/** Of one pile, oldest first. */
export async function decisionsOf(db: Db, pileId: string): Promise<Decision[]> {
  const rows = await db
    .selectFrom('decision')
    .innerJoin('account', 'account.id', 'decision.who')
    .selectAll('decision')
    .select('account.name')
    .where('pile_id', '=', pileId)
    .orderBy('decision.at')
    .execute()
  return rows.map(({ id, item, verdict, reason, who, name, at }) => ({
    id,
    item,
    verdict: verdict as Decision['verdict'],
    reason,
    who: { id: who, name },
    at,
  }))
}

/** The decision that stands for a garment, or for the pile where `item` is null. */
export const standing = (
  decisions: readonly Decision[],
  item: number | null,
): Decision | undefined => decisions.findLast((one) => one.item === item)

/** Whether the workshop has taken a pile. */
export async function isAccepted(
  db: Db,
  { id, status }: Pick<PileRow, 'id' | 'status'>,
): Promise<boolean> {
  if (status !== 'decided') return false
  return standing(await decisionsOf(db, id), null)?.verdict === 'accept'
}

/** What becomes of single garments, by number, once the workshop has taken their pile; empty before that. */
export async function decidedOf(
  db: Db,
  { id, status }: Pick<PileRow, 'id' | 'status'>,
): Promise<ReadonlyMap<number, Decided>> {
  const decisions = await decisionsOf(db, id)
  if (status !== 'decided' || standing(decisions, null)?.verdict !== 'accept') return new Map()
  return new Map(
    decisions.flatMap(({ item, verdict }) =>
      item === null ? [] : [[item, becomes[verdict as GarmentVerdict]]],
    ),
  )
}

/** Throws `reason_missing` {shortest} or `answer_too_long` {longest}. */
export function readReason(verdict: Decision['verdict'], raw: string): string {
  const reason = cleanText(raw)
  const { shortest, longest } = reasonLimits
  const length = lengthOf(reason)
  if (wantsReason(verdict) && length < shortest) {
    throw new Failure('reason_missing', { shortest })
  }
  if (length > longest) throw new Failure('answer_too_long', { longest })
  return reason
}

/** Garments that a person has to look at and that nobody has taken or declined yet. */
export const undecided = (
  garments: readonly { readonly item: number; readonly grade: string | null }[],
  decisions: readonly Decision[],
): number[] =>
  garments
    .filter(({ item, grade }) => {
      const verdict = standing(decisions, item)?.verdict
      return verdict === 'ask' || (!verdict && (grade === 'eyes' || grade === 'home'))
    })
    .map(({ item }) => item)

interface Subject {
  readonly row: PileRow
  readonly decisions: readonly Decision[]
}

/** Appends a decision, unless it is there already (false) or somebody decided otherwise meanwhile. */
export async function appendDecision(
  db: Db,
  clock: Clock,
  { row, decisions }: Subject,
  decision: Deciding & Pick<DecisionRow, 'item' | 'verdict'>,
): Promise<boolean> {
  const { item, verdict, reason, who, seen } = decision
  const newest = decisions.findLast((one) => item === null || one.item === item)
  const again =
    newest?.item === item &&
    newest.verdict === verdict &&
    newest.reason === reason &&
    newest.who.id === who
  if (again && newest.at > seen) return false
  if (newest && newest.at > seen) throw new Failure('decided_meanwhile')
  await db
    .insertInto('decision')
    .values({
      id: newId(),
      pile_id: row.id,
      item,
      verdict,
      reason,
      who,
      // Two in one millisecond, or a clock set back, may not change the order they were made in.
      at: Math.max(clock(), (decisions.at(-1)?.at ?? 0) + 1),
    })
    .execute()
  return true
}

/** What customers have given to the workshop; an open intake is still theirs alone. */
export const atTheDesk: readonly PileStatus[] = ['confirmed', 'decided']

/** What the desk still looks at: a pile that was withdrawn is kept, and nothing is decided of it. */
export const shownAtDesk: readonly PileStatus[] = [...atTheDesk, 'withdrawn']

/** Runs `work` on the locked pile, so that two at the desk take turns. */
export const onLockedPile = (
  store: Store,
  pileId: string,
  work: (db: Db, subject: Subject) => Promise<void>,
): Promise<void> =>
  store.transaction(async (trx) => {
    const row = await lockPile(trx, pileId)
    if (!row || !atTheDesk.includes(row.status)) throw new Failure('not_found')
    await work(trx, { row, decisions: await decisionsOf(trx, pileId) })
  })

const garmentsOf = (db: Db, pileId: string) =>
  db
    .selectFrom('garment')
    .select(['item', 'grade'])
    .where('pile_id', '=', pileId)
    .where('dropped', '=', 0)
    .execute()

/**
 * Decides of one garment. The same sent twice is one decision. Throws `reason_missing`,
 * `answer_too_long`, `not_found`, `pile_decided`, or `decided_meanwhile` where somebody decided of
 * the same garment after the page was made. `also` is done in the same transaction, with the reason as it
 * is kept, where the decision is new.
 */
export async function decideGarment(
  store: Store,
  clock: Clock,
  pileId: string,
  item: number,
  deciding: Deciding & { readonly verdict: GarmentVerdict },
  also: (trx: Db, row: PileRow, reason: string) => Promise<void> = async () => {},
): Promise<void> {
  const reason = readReason(deciding.verdict, deciding.reason)
  await onLockedPile(store, pileId, async (db, subject) => {
    const garments = await garmentsOf(db, pileId)
    if (!garments.some((garment) => garment.item === item)) throw new Failure('not_found')
    if (subject.row.status === 'decided') throw new Failure('pile_decided')
    const appended = await appendDecision(db, clock, subject, { ...deciding, reason, item })
    if (appended) await also(db, subject.row, reason)
    await projectLaidOut(db, pileId)
  })
}

/**
 * Decides of the whole pile: accepted and declined piles are decided, one put on hold waits (again).
 * Throws what `decideGarment` throws, or `garments_undecided` {count}: a pile is accepted after its
 * doubtful garments.
 */
export async function decidePile(
  store: Store,
  clock: Clock,
  pileId: string,
  deciding: Deciding & { readonly verdict: PileVerdict },
): Promise<void> {
  const { verdict } = deciding
  const reason = readReason(verdict, deciding.reason)
  await onLockedPile(store, pileId, async (db, subject) => {
    if (verdict === 'accept') {
      const count = undecided(await garmentsOf(db, pileId), subject.decisions).length
      if (count > 0) throw new Failure('garments_undecided', { count })
    }
    await appendDecision(db, clock, subject, { ...deciding, reason, item: null })
    if (verdict !== 'accept') await endSent(db, pileId, clock())
    await db
      .updateTable('pile')
      .set({ status: verdict === 'hold' ? 'confirmed' : 'decided' })
      .where('id', '=', pileId)
      .execute()
    await projectLaidOut(db, pileId)
  })
}
