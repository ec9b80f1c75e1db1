import type { Db } from '../store/schema.ts'

/** A question left to a person in an intake that is not confirmed yet. */
export interface Asked {
  readonly pile: number
  /** The garment's number and name; 0 and null: the pile's own question. */
  readonly item: number
  readonly name: string | null
  readonly question: string
  readonly text: string
  readonly at: number
}

const most = 50

/** What customers ask while they are still answering, oldest first, fifty at most. */
export async function askedMeanwhile(db: Db): Promise<Asked[]> {
  return db
    .selectFrom('note')
    .innerJoin('pile', 'pile.id', 'note.pile_id')
    .leftJoin('garment', (join) =>
      join.onRef('garment.pile_id', '=', 'note.pile_id').onRef('garment.item', '=', 'note.item'),
    )
    .select([
      'pile.number as pile',
      'note.item',
      'garment.name',
      'note.question',
      'note.text',
      'note.at',
    ])
    .where('pile.status', '=', 'open')
    .where('note.settled_at', 'is', null)
    .orderBy('note.at')
    .orderBy('note.id')
    .limit(most)
    .execute()
}
