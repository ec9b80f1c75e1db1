import type { Act } from '../flow/grammar.ts'
import type { Db, PileRow } from '../store/schema.ts'
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

/** Garments whose row an act may change: its own, or all where it speaks of the whole pile. */
function touched(pile: Pile, act: Act | null): readonly Garment[] {
  if (!act || act.act === 'close') return act ? [] : pile.garments
  return act.item === 0 ? pile.garments : pile.garments.filter(({ n }) => n === act.item)
}

/** Writes what the queue reads, in the transaction of the act. `null` writes every row. */
export async function project(db: Db, row: PileRow, pile: Pile, act: Act | null): Promise<void> {
  const { pile_id, ...standing } = standingRow(row, pile)
  await db
    .insertInto('standing')
    .values({ pile_id, ...standing })
    .onConflict((conflict) => conflict.column('pile_id').doUpdateSet(standing))
    .execute()
  for (const garment of touched(pile, act)) {
    const { pile_id: _, item, ...values } = garmentRow(row.id, garment)
    await db
      .insertInto('garment')
      .values({ pile_id, item, ...values })
      .onConflict((conflict) => conflict.columns(['pile_id', 'item']).doUpdateSet(values))
      .execute()
  }
}
