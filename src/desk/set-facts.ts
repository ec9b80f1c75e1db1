import type { Clock } from '../base/clock.ts'
import { Failure } from '../base/failures.ts'
import { lengthOf } from '../flow/sense.ts'
import { cleanText } from '../flow/text.ts'
import type { Knowledge } from '../intake/knowledge.ts'
import { readFactSet } from '../intake/set-facts.ts'
import { project } from '../intake/standing.ts'
import type { Store } from '../store/open.ts'
import { lockPile } from '../store/rows.ts'
import type { Db, FactSource, PileRow } from '../store/schema.ts'
import { atTheDesk, reasonLimits } from './decisions.ts'
import { factSetsOf, insertFactSet, lastKept, newestSet, undoFactSet } from './fact-sets.ts'
import { projectLaidOut } from './laid-out.ts'
import { planMarksOf } from './plan-marks.ts'
import { pileAsKnown } from './spots.ts'

/** What is set of one garment, as a page sends it. */
export interface SettingFacts {
  readonly item: number
  /** Values by the fact's name; what they may be says `settableFacts`. */
  readonly facts: Readonly<Record<string, string>>
  readonly source: FactSource
  readonly reason: string
  /** The account's id. */
  readonly who: string
  /** When the newest that the page showed of this garment was set or undone; 0: it showed none. */
  readonly seen: number
}

interface At {
  readonly store: Store
  readonly clock: Clock
  readonly knowledge: Knowledge
}

/** Throws `reason_missing` {shortest} or `answer_too_long` {longest}. */
function readReason(raw: string): string {
  const reason = cleanText(raw)
  const { shortest, longest } = reasonLimits
  if (lengthOf(reason) < shortest) throw new Failure('reason_missing', { shortest })
  if (lengthOf(reason) > longest) throw new Failure('answer_too_long', { longest })
  return reason
}

/** Grades the pile anew with the facts that stand, and writes what the queue reads. */
export async function projectKnown(db: Db, knowledge: Knowledge, row: PileRow): Promise<void> {
  const pile = await pileAsKnown(db, knowledge, row, await planMarksOf(db, row.id))
  await project(db, row, pile)
  await projectLaidOut(db, row.id)
}

/**
 * Sets facts in the caller's transaction, on a pile that it has locked. One that is set so already is not set
 * again. Throws `not_found`, `answer_not_offered`, `reason_missing`, `answer_too_long`, or `decided_meanwhile`
 * where somebody else set or undid one of this garment since.
 */
export async function setFactsLocked(
  db: Db,
  { clock }: Pick<At, 'clock'>,
  pileId: string,
  setting: SettingFacts,
): Promise<void> {
  const { item, source, who, seen } = setting
  const reason = readReason(setting.reason)
  const wanted = Object.entries(setting.facts).map(([fact, value]) => readFactSet(fact, value))
  const garment = await db
    .selectFrom('garment')
    .select('item')
    .where('pile_id', '=', pileId)
    .where('item', '=', item)
    .where('dropped', '=', 0)
    .executeTakeFirst()
  if (!garment) throw new Failure('not_found')
  const sets = await factSetsOf(db, pileId)
  const fresh = wanted.filter(({ fact, value }) => {
    const last = lastKept(sets, item, fact)
    return last?.value !== value || last.source !== source
  })
  if (fresh.length === 0) return
  if (newestSet(sets, item) > seen) throw new Failure('decided_meanwhile')
  const from = Math.max(clock(), newestSet(sets) + 1)
  for (const [n, one] of fresh.entries()) {
    await insertFactSet(db, pileId, { ...one, item, source, reason, who, at: from + n })
  }
}

const onLocked = (
  { store, knowledge }: At,
  pileId: string,
  work: (db: Db, row: PileRow) => Promise<void>,
): Promise<void> =>
  store.transaction(async (trx) => {
    const row = await lockPile(trx, pileId)
    if (!row || !atTheDesk.includes(row.status)) throw new Failure('not_found')
    await work(trx, row)
    await projectKnown(trx, knowledge, row)
  })

/** Sets facts of a garment; grade, flags and plan follow. Throws what `setFactsLocked` throws. */
export const setFacts = (at: At, pileId: string, setting: SettingFacts): Promise<void> =>
  onLocked(at, pileId, (db) => setFactsLocked(db, at, pileId, setting))

/** Undoes one, by its id: what was known before stands again. Throws `not_found`. */
export const undoFact = (at: At, pileId: string, id: string, who: string): Promise<void> =>
  onLocked(at, pileId, async (db) => {
    const sets = await factSetsOf(db, pileId)
    await undoFactSet(db, pileId, id, { who, at: Math.max(at.clock(), newestSet(sets) + 1) })
  })
