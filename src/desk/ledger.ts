import type { Clock } from '../base/clock.ts'
import { Failure } from '../base/failures.ts'
import { follow, type Standing, standOf } from '../custody/follow.ts'
import type { LeftoverChoice, PileFacts, Situation } from '../custody/guards.ts'
import { whereabouts } from '../custody/states.ts'
import { readSubjectKey, subjectCode } from '../custody/subject.ts'
import type { Store } from '../store/open.ts'
import { lockPile } from '../store/rows.ts'
import type { Db, PileRow } from '../store/schema.ts'
import { recordsOf, standingRecords, stoppedItems } from './bench-records.ts'
import { entriesOfPile, type KeptEntry } from './custody-entries.ts'
import { cuttingOf } from './cutting.ts'
import { atTheDesk, decisionsOf, standing } from './decisions.ts'
import { laidOutIn, projectLaidOut, seenOf } from './laid-out.ts'

/** What was signed off of a pile, and not taken back; null: nothing. */
export async function signedOffOf(db: Db, pileId: string): Promise<PileFacts['signedOff']> {
  const row = await db
    .selectFrom('sign_off')
    .select('leftovers')
    .where('pile_id', '=', pileId)
    .where('undone_at', 'is', null)
    .orderBy('at', 'desc')
    .executeTakeFirst()
  return row ? { leftovers: row.leftovers as LeftoverChoice } : null
}

/** What moves hang on beside the entries themselves. */
export async function pileFacts(db: Db, { id, status }: PileRow): Promise<PileFacts> {
  const decisions = await decisionsOf(db, id)
  const items = new Set(decisions.flatMap(({ item }) => item ?? []))
  const refused = (item: number) =>
    ['decline', 'ask'].includes(standing(decisions, item)?.verdict ?? '')
  const records = standingRecords(await recordsOf(db, id))
  return {
    accepted: status === 'decided' && standing(decisions, null)?.verdict === 'accept',
    notTaken: [...items].filter(refused),
    signedOff: await signedOffOf(db, id),
    cutting: await cuttingOf(db, id, records),
    stopped: stoppedItems(records),
    seen: seenOf(await laidOutIn(db, id, records)),
  }
}

/** A pile's entries while it is locked; what is appended is among them at once. */
export interface Ledger {
  readonly db: Db
  readonly row: PileRow
  readonly facts: PileFacts
  readonly entries: KeptEntry[]
  readonly clock: Clock
}

/** An entry before it has its place in the order. */
export type Draft = Omit<KeptEntry, 'seq' | 'at' | 'who'> & {
  /** The account's id; null: the customer. */
  readonly who: string | null
}

export const situationOf = (
  { facts, entries }: Pick<Ledger, 'facts' | 'entries'>,
  via: string | null = null,
): Situation => ({ pile: facts, subjects: follow(entries), via })

async function projectSubject(
  { db, row }: Ledger,
  subject: string,
  standing: Standing | null,
  since: number,
): Promise<void> {
  if (!standing) {
    await db
      .deleteFrom('custody')
      .where('pile_id', '=', row.id)
      .where('subject', '=', subject)
      .execute()
    return
  }
  const { kind } = readSubjectKey(subject)!
  const values = {
    kind,
    code: subjectCode(row.number, subject),
    state: standing.state,
    whereabouts: whereabouts(kind, standing.state),
    place: standing.place,
    since,
    last_seq: standing.last,
  }
  await db
    .insertInto('custody')
    .values({ pile_id: row.id, subject, ...values })
    .onConflict((conflict) => conflict.columns(['pile_id', 'subject']).doUpdateSet(values))
    .execute()
}

/** Appends an entry, and writes where its subject is, in the caller's transaction. */
export async function append(ledger: Ledger, draft: Draft): Promise<KeptEntry> {
  const { db, row, entries, clock } = ledger
  const last = entries.at(-1)
  const { photo, who, from, to, ...same } = draft
  // A clock that was set back may not change the order.
  const at = Math.max(clock(), last?.at ?? 0)
  const seq = (last?.seq ?? 0) + 1
  await db
    .insertInto('custody_move')
    .values({
      ...same,
      pile_id: row.id,
      seq,
      from_state: from,
      to_state: to,
      photo_id: photo,
      who,
      at,
    })
    .execute()
  const entry = { ...draft, seq, at, who: who === null ? null : { id: who, name: '' } }
  entries.push(entry)
  const standing = standOf(entries.filter(({ subject }) => subject === draft.subject))
  const since = entries.find((one) => one.seq === standing?.newest.seq)?.at ?? at
  await projectSubject(ledger, draft.subject, standing, since)
  // What comes to the table or leaves it is another quilt than the one that was shown.
  if (from === 'cut' || to === 'cut') await projectLaidOut(db, row.id)
  return entry
}

/** Garments that the customer sends are expected from the day on that anything happens with the pile. */
async function expectAll(ledger: Ledger, who: string | null): Promise<void> {
  const garments = await ledger.db
    .selectFrom('garment')
    .select('item')
    .where('pile_id', '=', ledger.row.id)
    .where('dropped', '=', 0)
    .orderBy('item')
    .execute()
  for (const { item } of garments) {
    const subject = String(item)
    if (ledger.entries.some((one) => one.subject === subject)) continue
    await append(ledger, {
      subject,
      move: 'expect',
      from: null,
      to: 'expected',
      place: null,
      via: null,
      note: '',
      photo: null,
      who,
      undoes: null,
      idem: `expect-${item}`,
    })
  }
}

/** The ledger of a pile that the caller's transaction has locked; its garments are expected at least. */
export async function ledgerOf(
  db: Db,
  clock: Clock,
  row: PileRow,
  who: string | null,
): Promise<Ledger> {
  const ledger = {
    db,
    row,
    clock,
    facts: await pileFacts(db, row),
    entries: await entriesOfPile(db, row.id),
  }
  await expectAll(ledger, who)
  return ledger
}

/**
 * Begins a pile's custody when it is accepted: its garments are expected, those that were declined are not sent.
 * Done again it changes nothing.
 */
export const openCustody = (
  at: { readonly store: Store; readonly clock: Clock },
  pileId: string,
  who: string,
): Promise<void> =>
  onLedger(at, pileId, who, async (ledger) => {
    const subjects = follow(ledger.entries)
    for (const { item, verdict, reason } of await decisionsOf(ledger.db, pileId)) {
      const subject = String(item)
      if (item === null || verdict !== 'decline' || !ledger.facts.notTaken.includes(item)) continue
      if (subjects.get(subject)?.state !== 'expected') continue
      if (ledger.entries.some(({ idem }) => idem === `declined-${item}`)) continue
      await append(ledger, {
        subject,
        move: 'not-sent',
        from: 'expected',
        to: 'not-sent',
        place: null,
        via: null,
        note: reason,
        photo: null,
        who,
        undoes: null,
        idem: `declined-${item}`,
      })
    }
  })

/** Runs `work` on a pile's ledger, so that two people take turns. Throws `not_found` for a pile that is not at the desk. */
export const onLedger = <T>(
  { store, clock }: { readonly store: Store; readonly clock: Clock },
  pileId: string,
  who: string | null,
  work: (ledger: Ledger) => Promise<T>,
): Promise<T> =>
  store.transaction(async (trx) => {
    const row = await lockPile(trx, pileId)
    if (!row || !atTheDesk.includes(row.status)) throw new Failure('not_found')
    return work(await ledgerOf(trx, clock, row, who))
  })
