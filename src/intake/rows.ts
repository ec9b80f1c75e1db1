import { type Clock, days } from '../base/clock.ts'
import { Failure } from '../base/failures.ts'
import { newId, newKey, sha256 } from '../base/ids.ts'
import type { Act, ContactValue } from '../flow/grammar.ts'
import { nextNumber } from '../store/rows.ts'
import type { ActRow, Db, PileRow } from '../store/schema.ts'

/** One act as it was appended: who, when, and its place in the order. */
export interface Entry {
  readonly seq: number
  readonly at: number
  readonly who: ActRow['who']
  readonly act: Act
}

export async function insertPile(
  db: Db,
  pile: { language: string; flowHash: string; at: number },
): Promise<PileRow> {
  const row = {
    id: newId(),
    number: await nextNumber(db, 'pile'),
    language: pile.language,
    flow_hash: pile.flowHash,
    status: 'open' as const,
    seq: 0,
    started_at: pile.at,
    changed_at: pile.at,
    confirmed_at: null,
  }
  await db.insertInto('pile').values(row).execute()
  return row
}

/** Makes a link's key; only its hash is stored. `mailId`: the mail that tells it. */
export async function mintLink(
  db: Db,
  pileId: string,
  { at, lastsDays, mailId = null }: { at: number; lastsDays: number; mailId?: string | null },
): Promise<string> {
  const key = newKey()
  await db
    .insertInto('pile_link')
    .values({
      key_hash: sha256(key),
      pile_id: pileId,
      made_at: at,
      expires_at: at + days(lastsDays),
      revoked_at: null,
      mail_id: mailId,
    })
    .execute()
  return key
}

/** The pile behind a link's key. Throws `link_unknown` or `link_expired`. */
export async function pileOfKey(db: Db, key: string, clock: Clock): Promise<PileRow> {
  const row = await db
    .selectFrom('pile_link')
    .innerJoin('pile', 'pile.id', 'pile_link.pile_id')
    .selectAll('pile')
    .select(['pile_link.expires_at', 'pile_link.revoked_at'])
    .where('pile_link.key_hash', '=', sha256(key))
    .executeTakeFirst()
  if (!row || row.revoked_at !== null) throw new Failure('link_unknown')
  const { expires_at, revoked_at: _, ...pile } = row
  if (expires_at <= clock()) throw new Failure('link_expired')
  return pile
}

export async function entriesOf(db: Db, pileId: string): Promise<Entry[]> {
  const rows = await db
    .selectFrom('act')
    .select(['seq', 'at', 'who', 'act'])
    .where('pile_id', '=', pileId)
    .orderBy('seq')
    .execute()
  return rows.map(({ act, ...row }) => ({ ...row, act: JSON.parse(act) as Act }))
}

/** How the customer is reached, as they last said; null: they have not told, or left it to a person. */
export async function contactOf(db: Db, pileId: string): Promise<ContactValue | null> {
  const told = (await entriesOf(db, pileId)).findLast(
    ({ act }) => act.act === 'answer' && act.question === 'contact',
  )
  if (told?.act.act !== 'answer' || !('given' in told.act.reply)) return null
  return told.act.reply.given as ContactValue
}

/** True where this key has been used on the pile: the act behind it is already kept. */
export async function isKept(db: Db, pileId: string, idem: string): Promise<boolean> {
  const row = await db
    .selectFrom('act')
    .select('seq')
    .where('pile_id', '=', pileId)
    .where('idem', '=', idem)
    .executeTakeFirst()
  return row !== undefined
}

export async function appendAct(
  db: Db,
  pile: PileRow,
  entry: Entry & { idem: string },
): Promise<void> {
  await db
    .insertInto('act')
    .values({
      pile_id: pile.id,
      seq: entry.seq,
      idem: entry.idem,
      who: entry.who,
      act: JSON.stringify(entry.act),
      at: entry.at,
    })
    .execute()
  await db
    .updateTable('pile')
    .set({ seq: entry.seq, changed_at: entry.at })
    .where('id', '=', pile.id)
    .execute()
}

export async function insertNote(
  db: Db,
  note: { pileId: string; item: number; question: string; text: string; at: number },
): Promise<void> {
  await db
    .insertInto('note')
    .values({
      id: newId(),
      pile_id: note.pileId,
      item: note.item,
      question: note.question,
      text: note.text,
      at: note.at,
      settled_at: null,
      settled_by: null,
    })
    .execute()
}
