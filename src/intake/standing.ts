import type { CompiledQuery } from 'kysely'
import { type WrittenInto, writing } from '../store/given-rows.ts'
import type { Db, PileRow } from '../store/schema.ts'
import type { Garment, Pile } from './pile.ts'
import type { Since } from './since.ts'

const garmentRow = (pileId: string, garment: Garment) => ({
  pile_id: pileId,
  item: garment.n,
  tag: garment.code,
  name: garment.name ?? '',
  kind: garment.facts.kind,
  grade: garment.grading?.grade ?? null,
  flags: JSON.stringify(garment.grading?.flags ?? []),
  facts: JSON.stringify(garment.facts),
  dropped: (garment.dropped ? 1 : 0) as 0 | 1,
})

const needsEyes = ({ dropped, grading }: Garment): boolean =>
  !dropped && (grading?.grade === 'eyes' || grading?.grade === 'home')

/** Where its customer is: a question by its id. */
function placeOf({ followed: { place } }: Pile): object {
  return place.at === 'question' ? { at: place.at, question: { id: place.question.id } } : place
}

const standingRow = (row: PileRow, pile: Pile) => ({
  pile_id: row.id,
  seq: row.seq,
  place: JSON.stringify(placeOf(pile)),
  // Nobody reads it, and servers of the last release still write it: the column goes with the next one.
  tally: '{}',
  summary: JSON.stringify({
    layout: pile.wish.layout.id,
    size: pile.wish.size,
    quilts: pile.wish.quilts,
    recipient: pile.recipient,
  }),
  garments: pile.garments.filter(({ dropped }) => !dropped).length,
  needs_eyes: pile.garments.filter(needsEyes).length,
  contact_name: pile.contact?.name ?? null,
  need_by: pile.needBy,
})

/** A pile whose rows are to be written. */
export interface Projected {
  readonly row: PileRow
  readonly pile: Pile
  readonly since: Since
}

/** Garments whose row these acts may change: their own, or all where one speaks of the whole pile. */
function touched({ pile, since }: Projected): readonly Garment[] {
  if (!since) return pile.garments
  const items = since.flatMap((act) => (act.act === 'close' ? [] : [act.item]))
  return items.includes(0) ? pile.garments : pile.garments.filter(({ n }) => items.includes(n))
}

export const standings = {
  table: 'standing',
  columns: {
    pile_id: 'text',
    seq: 'bigint',
    place: 'text',
    tally: 'text',
    summary: 'text',
    garments: 'bigint',
    needs_eyes: 'bigint',
    contact_name: 'text',
    need_by: 'bigint',
  },
  key: ['pile_id'],
} as const satisfies WrittenInto<'standing'>

export const garments = {
  table: 'garment',
  columns: {
    pile_id: 'text',
    item: 'bigint',
    tag: 'text',
    name: 'text',
    kind: 'text',
    grade: 'text',
    flags: 'text',
    facts: 'text',
    dropped: 'bigint',
  },
  key: ['pile_id', 'item'],
} as const satisfies WrittenInto<'garment'>

/** The rows that the queue reads, of piles that are each named once. */
export const projected = (piles: readonly Projected[]) => ({
  standings: piles.map(({ row, pile }) => standingRow(row, pile)),
  garments: piles.flatMap((one) => touched(one).map((garment) => garmentRow(one.row.id, garment))),
})

const writeStandings = writing(standings)
const writeGarments = writing(garments)

/** What writes them. */
export function projections(db: Db, piles: readonly Projected[]): CompiledQuery[] {
  const rows = projected(piles)
  return [
    ...(rows.standings.length > 0 ? [writeStandings(db, rows.standings)] : []),
    ...(rows.garments.length > 0 ? [writeGarments(db, rows.garments)] : []),
  ]
}

/** Writes every row of a pile, in the transaction given. */
export async function project(db: Db, row: PileRow, pile: Pile): Promise<void> {
  for (const one of projections(db, [{ row, pile, since: null }])) await db.executeQuery(one)
}
