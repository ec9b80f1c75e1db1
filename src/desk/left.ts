import type { Db, PileStatus } from '../store/schema.ts'

/** A pile that its customer took back after it was confirmed: to change it, or for good. */
export interface LeftPile {
  readonly number: number
  readonly contactName: string | null
  readonly status: PileStatus
  readonly at: number
}

/** No more are shown: the newest. */
const most = 20

export async function leftPiles(db: Db): Promise<LeftPile[]> {
  const rows = await db
    .selectFrom('pile')
    .innerJoin('standing', 'standing.pile_id', 'pile.id')
    .select((eb) => [
      'pile.number',
      'pile.status',
      'pile.confirmed_at',
      'standing.contact_name',
      eb
        .selectFrom('leaving')
        .select('leaving.at')
        .whereRef('leaving.pile_id', '=', 'pile.id')
        .orderBy('leaving.at', 'desc')
        .limit(1)
        .as('left_at'),
    ])
    .where('pile.status', 'in', ['open', 'withdrawn'])
    .where('pile.confirmed_at', 'is not', null)
    .orderBy('left_at', 'desc')
    .limit(most)
    .execute()
  return rows.map(({ number, status, confirmed_at, contact_name, left_at }) => ({
    number,
    status,
    contactName: contact_name,
    at: left_at ?? confirmed_at!,
  }))
}
