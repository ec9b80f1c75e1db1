import type { Entry } from '../custody/follow.ts'
import type { State } from '../custody/states.ts'
import type { Db } from '../store/schema.ts'

/** An entry with who made it and when. */
export interface KeptEntry extends Entry {
  readonly note: string
  /** The id of a photo that shows it; null: none. */
  readonly photo: string | null
  /** The account's id and name; null: the customer. */
  readonly who: { readonly id: string; readonly name: string } | null
  readonly at: number
  readonly idem: string
}

/** All entries of one pile, in order. */
export async function entriesOfPile(db: Db, pileId: string): Promise<KeptEntry[]> {
  const rows = await db
    .selectFrom('custody_move')
    .leftJoin('account', 'account.id', 'custody_move.who')
    .selectAll('custody_move')
    .select('account.name')
    .where('pile_id', '=', pileId)
    .orderBy('seq')
    .execute()
  return rows.map(({ from_state, to_state, photo_id, who, name, move, ...row }) => ({
    seq: row.seq,
    subject: row.subject,
    move: move as Entry['move'],
    from: from_state as State | null,
    to: to_state as State | null,
    place: row.place,
    via: row.via,
    note: row.note,
    photo: photo_id,
    who: who === null ? null : { id: who, name: name ?? '' },
    at: row.at,
    undoes: row.undoes,
    idem: row.idem,
  }))
}
