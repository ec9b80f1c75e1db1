import type { CompiledQuery } from 'kysely'
import type { Act } from '../flow/grammar.ts'
import { inPieces } from '../store/rows.ts'
import type { Db, NewRow, PileRow } from '../store/schema.ts'
import type { Garment, Pile } from './pile.ts'

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

const standingRow = (row: PileRow, pile: Pile) => ({
  pile_id: row.id,
  seq: row.seq,
  place: JSON.stringify(pile.followed.place),
  tally: JSON.stringify(pile.tally),
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
  /** What was done since they were last written; null: nobody knows. */
  readonly acts: readonly Act[] | null
}

/** Garments whose row these acts may change: their own, or all where one speaks of the whole pile. */
function touched({ pile, acts }: Projected): readonly Garment[] {
  if (!acts) return pile.garments
  const items = acts.flatMap((act) => (act.act === 'close' ? [] : [act.item]))
  return items.includes(0) ? pile.garments : pile.garments.filter(({ n }) => items.includes(n))
}

const upsertStandings = (db: Db, rows: readonly NewRow<'standing'>[]): CompiledQuery =>
  db
    .insertInto('standing')
    .values(rows)
    .onConflict((conflict) =>
      conflict.column('pile_id').doUpdateSet(({ ref }) => ({
        seq: ref('excluded.seq'),
        place: ref('excluded.place'),
        tally: ref('excluded.tally'),
        summary: ref('excluded.summary'),
        garments: ref('excluded.garments'),
        needs_eyes: ref('excluded.needs_eyes'),
        contact_name: ref('excluded.contact_name'),
        need_by: ref('excluded.need_by'),
      })),
    )
    .compile()

const upsertGarments = (db: Db, rows: readonly NewRow<'garment'>[]): CompiledQuery =>
  db
    .insertInto('garment')
    .values(rows)
    .onConflict((conflict) =>
      conflict.columns(['pile_id', 'item']).doUpdateSet(({ ref }) => ({
        tag: ref('excluded.tag'),
        name: ref('excluded.name'),
        kind: ref('excluded.kind'),
        grade: ref('excluded.grade'),
        flags: ref('excluded.flags'),
        facts: ref('excluded.facts'),
        dropped: ref('excluded.dropped'),
      })),
    )
    .compile()

/** What writes the rows that the queue reads, of piles that are each named once. */
export const projections = (db: Db, piles: readonly Projected[]): CompiledQuery[] => [
  ...inPieces(piles.map(({ row, pile }) => standingRow(row, pile))).map((rows) =>
    upsertStandings(db, rows),
  ),
  ...inPieces(
    piles.flatMap((one) => touched(one).map((garment) => garmentRow(one.row.id, garment))),
  ).map((rows) => upsertGarments(db, rows)),
]

/** Writes every row of a pile, in the transaction given. */
export async function project(db: Db, row: PileRow, pile: Pile): Promise<void> {
  for (const one of projections(db, [{ row, pile, acts: null }])) await db.executeQuery(one)
}
