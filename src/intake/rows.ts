import { type Clock, days } from '../base/clock.ts'
import { Failure } from '../base/failures.ts'
import { newId, newKey, sha256 } from '../base/ids.ts'
import type { Act, ContactValue } from '../flow/grammar.ts'
import { type LinkedPile, linkedPiles, nextNumber } from '../store/rows.ts'
import type { ActRow, Db, PileRow, Row } from '../store/schema.ts'

/** One act as it was appended: who, when, and its place in the order. */
export interface Entry {
  readonly seq: number
  readonly at: number
  readonly who: ActRow['who']
  readonly act: Act
}

/** The same with its idempotency key: the same key on the same pile is the same act. */
export interface KeptAct extends Entry {
  readonly idem: string
}

/** A row for a new pile, with the number that it takes. */
export const newPile = async (
  db: Db,
  pile: { language: string; flowHash: string; at: number },
): Promise<PileRow> => ({
  id: newId(),
  number: await nextNumber(db, 'pile'),
  language: pile.language,
  flow_hash: pile.flowHash,
  status: 'open',
  seq: 0,
  started_at: pile.at,
  changed_at: pile.at,
  confirmed_at: null,
})

/** A row for a new link, and its key, of which only the hash is stored. `mailId`: the mail that tells it. */
export function newLink(
  pileId: string,
  { at, lastsDays, mailId = null }: { at: number; lastsDays: number; mailId?: string | null },
): { readonly key: string; readonly row: Row<'pile_link'> } {
  const key = newKey()
  const row = {
    key_hash: sha256(key),
    pile_id: pileId,
    made_at: at,
    expires_at: at + days(lastsDays),
    revoked_at: null,
    mail_id: mailId,
  }
  return { key, row }
}

/** Makes a link. Returns its key. */
export async function mintLink(
  db: Db,
  pileId: string,
  lasts: Parameters<typeof newLink>[1],
): Promise<string> {
  const { key, row } = newLink(pileId, lasts)
  await db.insertInto('pile_link').values(row).execute()
  return key
}

/** The pile of a link that holds now. Throws `link_unknown` or `link_expired`. */
export function pileBehind(linked: LinkedPile | undefined, clock: Clock): PileRow {
  if (!linked || linked.revoked_at !== null) throw new Failure('link_unknown')
  const { key_hash: _, expires_at, revoked_at: __, ...pile } = linked
  if (expires_at <= clock()) throw new Failure('link_expired')
  return pile
}

/** The pile behind a link's key. Throws `link_unknown` or `link_expired`. */
export async function pileOfKey(db: Db, key: string, clock: Clock): Promise<PileRow> {
  const [linked] = await linkedPiles(db, [sha256(key)])
  return pileBehind(linked, clock)
}

/** A pile's acts up to the one that its row names, from the one with the number `from` on. */
export async function actsOf(db: Db, { id, seq }: PileRow, from = 1): Promise<KeptAct[]> {
  const rows = await db
    .selectFrom('act')
    .select(['seq', 'at', 'who', 'act', 'idem'])
    .where('pile_id', '=', id)
    .where('seq', '>=', from)
    .where('seq', '<=', seq)
    .orderBy('seq')
    .execute()
  return rows.map(({ act, ...row }) => ({ ...row, act: JSON.parse(act) as Act }))
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

export interface Note {
  readonly pileId: string
  readonly item: number
  readonly question: string
  readonly text: string
  readonly at: number
}

export const noteRow = ({ pileId, ...note }: Note): Row<'note'> => ({
  id: newId(),
  pile_id: pileId,
  ...note,
  settled_at: null,
  settled_by: null,
})

export async function insertNote(db: Db, note: Note): Promise<void> {
  await db.insertInto('note').values(noteRow(note)).execute()
}
