import type { Db, PileStatus } from '../store/schema.ts'
import type { LaidOutState } from '../store/schema-bench.ts'
import type { WaitsOn } from '../store/schema-desk.ts'

/** What was decided of a pile, or of one of its garments, as far as waiting hangs on it. */
interface Told {
  /** The garment's number; null: the whole pile. */
  readonly item: number | null
  readonly verdict: string
  readonly at: number
}

export interface ToWait {
  readonly status: PileStatus
  readonly confirmedAt: number
  /** Oldest first. */
  readonly decisions: readonly Told[]
  /** Its garments that are sent, with their grades. */
  readonly garments: readonly { readonly item: number; readonly grade: string | null }[]
  /** When each question or message of the customer that nobody has seen to was written. */
  readonly questions: readonly number[]
  /** When each question to the customer that is not answered was written. */
  readonly asked: readonly number[]
  /** When an offer was sent that the customer has not accepted; null: none is there. */
  readonly offered: number | null
  /** How it stands with the laid-out quilt, and since when; null: nothing is laid out. */
  readonly laid: { readonly state: LaidOutState; readonly since: number } | null
}

export interface Waits {
  readonly on: WaitsOn
  /** Since when it has been waiting on them, ms UTC. */
  readonly since: number
  /** Garments that nobody decided of and that a person has to look at. */
  readonly eyes: number
  /** Questions of the customer that nobody has seen to. */
  readonly questions: number
  /** What was last decided of the whole pile. */
  readonly verdict: string | null
}

/** The customer waits until the quilt is laid out once more. */
const toLayAnew: readonly LaidOutState[] = ['change', 'anew']

/** On whom a pile waits that its customer has given to the workshop. */
export function waitingOf(pile: ToWait): Waits {
  const { status, confirmedAt, decisions, garments, questions } = pile
  const laid = status === 'decided' ? pile.laid : null
  const last = (item: number | null) => decisions.findLast((one) => one.item === item)
  const ofPile = last(null)
  const eyes = garments.filter(
    ({ item, grade }) => (grade === 'eyes' || grade === 'home') && !last(item),
  ).length
  const base = { eyes, questions: questions.length, verdict: ofPile?.verdict ?? null }
  const newest = Math.max(confirmedAt, ...decisions.map(({ at }) => at))

  const ours = [...questions, ...(laid && toLayAnew.includes(laid.state) ? [laid.since] : [])]
  if (ours.length > 0) return { ...base, on: 'us', since: Math.min(...ours) }
  const nobody = { ...base, on: 'nobody', since: newest } as const
  if (status === 'withdrawn') return nobody
  if (status === 'decided') {
    const theirs = [
      ...pile.asked,
      ...(pile.offered === null ? [] : [pile.offered]),
      ...(laid?.state === 'asked' ? [laid.since] : []),
    ]
    return theirs.length > 0 ? { ...base, on: 'customer', since: Math.min(...theirs) } : nobody
  }
  if (ofPile?.verdict === 'hold') return { ...base, on: 'held', since: ofPile.at }
  const toAnswer = garments.flatMap(({ item }) => {
    const stands = last(item)
    return stands?.verdict === 'ask' ? [stands.at] : []
  })
  const asked = [...pile.asked, ...toAnswer]
  // What is left for us to look at comes before what somebody else may answer.
  if (eyes === 0 && asked.length > 0) {
    return { ...base, on: 'customer', since: Math.min(...asked) }
  }
  return { ...base, on: 'us', since: confirmedAt }
}

interface Row extends ToWait {
  readonly number: number
  readonly needBy: number | null
}

async function toWait(db: Db, pileId: string): Promise<Row | null> {
  const row = await db
    .selectFrom('pile')
    .innerJoin('standing', 'standing.pile_id', 'pile.id')
    .select(['pile.number', 'pile.status', 'pile.confirmed_at', 'standing.need_by'])
    .where('pile.id', '=', pileId)
    .executeTakeFirst()
  if (!row || row.confirmed_at === null) return null
  const [decisions, garments, notes, messages, offer, laid] = await Promise.all([
    db
      .selectFrom('decision')
      .select(['item', 'verdict', 'at'])
      .where('pile_id', '=', pileId)
      .orderBy('at')
      .execute(),
    db
      .selectFrom('garment')
      .select(['item', 'grade'])
      .where('pile_id', '=', pileId)
      .where('dropped', '=', 0)
      .execute(),
    db
      .selectFrom('note')
      .select('at')
      .where('pile_id', '=', pileId)
      .where('settled_at', 'is', null)
      .execute(),
    db
      .selectFrom('message')
      .select(['account_id', 'wants_answer', 'at'])
      .where('pile_id', '=', pileId)
      .where('settled_at', 'is', null)
      .execute(),
    db
      .selectFrom('offer')
      .select('sent_at')
      .where('pile_id', '=', pileId)
      .where('accepted_at', 'is', null)
      .where('ended_at', 'is', null)
      .executeTakeFirst(),
    db
      .selectFrom('laid_out')
      .select(['state', 'since'])
      .where('pile_id', '=', pileId)
      .executeTakeFirst(),
  ])
  const theirs = messages.filter(({ account_id }) => account_id === null)
  const ours = messages.filter((one) => one.account_id !== null && one.wants_answer === 1)
  return {
    number: row.number,
    needBy: row.need_by,
    status: row.status,
    confirmedAt: row.confirmed_at,
    decisions,
    garments,
    questions: [...notes, ...theirs].map(({ at }) => at),
    asked: ours.map(({ at }) => at),
    offered: offer?.sent_at ?? null,
    laid: laid ?? null,
  }
}

/**
 * Writes on whom a pile waits, in the transaction of what changed it. An intake that is open waits on its customer
 * and stands in no queue.
 */
export async function refreshWaiting(db: Db, pileId: string): Promise<void> {
  const facts = await toWait(db, pileId)
  if (!facts || facts.status === 'open') {
    await db.deleteFrom('waiting').where('pile_id', '=', pileId).execute()
    return
  }
  const { on, ...waits } = waitingOf(facts)
  const row = { number: facts.number, need_by: facts.needBy, on_whom: on, ...waits }
  await db
    .insertInto('waiting')
    .values({ pile_id: pileId, ...row })
    .onConflict((conflict) => conflict.column('pile_id').doUpdateSet(row))
    .execute()
}

const atOnce = 500

/** Fills in piles that were given to the workshop before there was a word for their waiting. Returns how many. */
export async function fillWaiting(db: Db): Promise<number> {
  for (let filled = 0; ; ) {
    const missing = await db
      .selectFrom('pile')
      .innerJoin('standing', 'standing.pile_id', 'pile.id')
      .leftJoin('waiting', 'waiting.pile_id', 'pile.id')
      .select('pile.id')
      .where('pile.status', '!=', 'open')
      .where('pile.confirmed_at', 'is not', null)
      .where('waiting.pile_id', 'is', null)
      .limit(atOnce)
      .execute()
    if (missing.length === 0) return filled
    for (const { id } of missing) await refreshWaiting(db, id)
    filled += missing.length
  }
}
